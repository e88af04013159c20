import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import type { RecallFileProps } from './recall-file-props.js';
import type { NamedHold } from './recall-file.js';

/** What blocks the goods: the holds that stand, and those that a recall would place. */
export function HoldsBox({ viewer, file, trouble, mayRun }: RecallFileProps & { readonly mayRun: boolean }): VNode {
  const { recall, holds, sequence } = file;
  const missing = holds.filter(({ heldBy }) => heldBy === null);
  const form = trouble?.of === 'holds' ? trouble.form : null;
  return (
    <section class="card" aria-labelledby="holds">
      <h2 id="holds">{say('recall-holds')}</h2>
      {recall.kind === 'exercise' ? <p>{say('recall-holds-exercise')}</p> : null}
      <Table
        caption={say('recall-holds-caption')}
        hasHiddenCaption
        columns={[{ head: say('recall-hold-of') }, { head: say('recall-hold-now') }]}
        rows={holds.map((hold) => ({
          key: `${hold.scope.id} ${hold.fromCount ?? ''}`,
          isLoud: recall.kind === 'recall' && hold.heldBy === null,
          cells: [holdText(hold), <HeldBy key="by" hold={hold} />],
        }))}
      />
      {mayRun && recall.kind === 'recall' && missing.length > 0 ? (
        <EntryForm
          viewer={viewer}
          id="holds-form"
          action={`/quality/recalls/${recall.id}/holds`}
          trouble={form}
          seen={{ kind: 'recall', id: recall.id, sequence }}
        >
          <TextEntry
            name="reason"
            label={say('recall-hold-reason')}
            hint={say('recall-hold-reason-hint')}
            maxLength={500}
            trouble={form}
          />
          <Act says={say('recall-hold-act', { count: missing.length })} tone="careful" accessKey="h" />
        </EntryForm>
      ) : null}
    </section>
  );
}

function holdText({ text, fromCount, toCount }: NamedHold): string {
  if (fromCount === null || toCount === null) return text;
  return `${text}, ${say('thread-counts', { from: fromCount + 1, to: toCount })}`;
}

function HeldBy({ hold }: { readonly hold: NamedHold }): VNode {
  const { heldBy, heldById } = hold;
  return heldBy === null || heldById === null ? (
    <>{say('recall-hold-none')}</>
  ) : (
    <a href={`/quality/holds/${heldById}`}>{heldBy}</a>
  );
}
