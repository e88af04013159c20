import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { actionText } from '../../journal/entry-text.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import { Shell } from '../../platform/web/shell.js';
import { permissionOf, type PaperFormFacts } from './form-kinds.js';
import { isClosed, strikeAction, type FormRow, type KeyedEntry, wordIn } from './form-rows.js';
import { notKnown } from './paper-form.form.js';
import type { PaperForm } from './paper-forms.js';
import { rowsText } from './paper-forms.page.js';
import type { RowFormProps } from './row-form-props.js';
import { RowForm } from './row-form.js';

export interface PaperSheetProps extends Omit<RowFormProps, 'row'> {
  readonly form: PaperForm;
  /** The row that is keyed in; null: none is left, or nobody may. */
  readonly row: FormRow | null;
  /** People by id. */
  readonly names: ReadonlyMap<string, string>;
  /** What to call the things that entries are about, by id: bags by number, pallets by SSCC. */
  readonly things: ReadonlyMap<string, string>;
  readonly trouble: FormTrouble | null;
}

/** A sheet that was written by hand: one row after the other is keyed in, struck, or still blank. */
export function paperSheetPage(props: PaperSheetProps): VNode {
  const { viewer, form, row } = props;
  const { facts, rows } = form;
  const title = say('paper-sheet-title', {
    sheet: facts.number,
    kind: say(`form-kind-${facts.kind}`),
    line: facts.lineName,
  });
  const mayKeyIn = mayDo(viewer.actor.roles, permissionOf[facts.kind]);
  return (
    <Shell title={title} viewer={viewer}>
      <p class="sentence">{rowsText(rows)}</p>
      <p class="quiet">
        {say('paper-sheet-printed', { at: localText(form.issuedAt, viewer.timeZone) })}{' '}
        {isClosed(rows) ? say('paper-sheet-keep') : say(`paper-sheet-order-${facts.kind}`)}
      </p>
      <div class="acts">
        <ActLink href={`/papers/${form.id}/file`} says={say('paper-sheet-open')} />
        <ActLink href="/paper-forms" says={say('paper-forms-title')} />
      </div>
      {props.trouble === null || (row !== null && mayKeyIn) ? null : (
        <p class="card refusal" role="alert">
          {props.trouble.sentence}
        </p>
      )}
      {row === null || !mayKeyIn ? null : <RowForm {...props} row={row} />}
      <Rows {...props} mayKeyIn={mayKeyIn} />
      {mayDo(viewer.actor.roles, 'keep-paper-forms') ? <StrikeRest {...props} /> : null}
    </Shell>
  );
}

function Rows({ viewer, form, names, things, mayKeyIn }: PaperSheetProps & { readonly mayKeyIn: boolean }): VNode {
  const hasNumbers = form.facts.ssccs.length > 0;
  return (
    <Table
      caption={say('paper-sheet-rows')}
      columns={[
        { head: say('paper-row'), align: 'number' },
        ...(hasNumbers ? [{ head: say('paper-row-number'), align: 'code' as const }] : []),
        { head: say('paper-row-what') },
        { head: say('paper-row-who') },
        { head: say('paper-row-act') },
      ]}
      rows={form.rows.map((row) => ({
        key: String(row.row),
        isLoud: row.state === 'begun',
        cells: [
          row.row,
          ...(hasNumbers ? [row.sscc] : []),
          <What key="what" row={row} viewer={viewer} form={form} things={things} />,
          <Who key="who" entry={row.entries[0] ?? null} names={names} />,
          <RowAct key="act" viewer={viewer} form={form} row={row} mayKeyIn={mayKeyIn} />,
        ],
      }))}
    />
  );
}

function RowAct({
  viewer,
  form,
  row,
  mayKeyIn,
}: Pick<PaperSheetProps, 'viewer' | 'form'> & { readonly row: FormRow; readonly mayKeyIn: boolean }): VNode | string {
  if (row.state === 'struck' && mayDo(viewer.actor.roles, 'keep-paper-forms')) {
    return <TakeBack viewer={viewer} form={form} row={row} />;
  }
  if (!mayKeyIn || row.state === 'keyed' || row.state === 'struck') return say(`paper-row-is-${row.state}`);
  const href = `/paper-forms/${form.facts.number}?row=${row.row}#row`;
  return <a href={href}>{say(row.state === 'begun' ? 'paper-row-end' : 'paper-row-key-in', { row: row.row })}</a>;
}

/** A row that was struck in error is made blank again, with a reason. */
function TakeBack({ viewer, form, row }: Pick<PaperSheetProps, 'viewer' | 'form'> & { readonly row: FormRow }): VNode {
  return (
    <details>
      <summary>{say('paper-row-is-struck')}</summary>
      <EntryForm
        viewer={viewer}
        action={`/paper-forms/${form.facts.number}/rows/${row.row}/take-back`}
        id={`take-back-${row.row}`}
      >
        <TextEntry name="reason" label={say('paper-take-back-why')} maxLength={300} required />
        <Act says={say('paper-take-back-act', { row: row.row })} tone="careful" />
      </EntryForm>
    </details>
  );
}

function What({
  row,
  viewer,
  form,
  things,
}: Pick<PaperSheetProps, 'viewer' | 'form' | 'things'> & { readonly row: FormRow }): VNode {
  return (
    <>
      {row.entries.map((entry) => (
        <div key={entry.entryId}>
          {entry.action === strikeAction
            ? say('paper-row-struck-for', { reason: entry.reason })
            : `${actionText(entry.action)}, ${localText(entry.happenedAt, viewer.timeZone)}`}{' '}
          <Thing entry={entry} facts={form.facts} things={things} />
        </div>
      ))}
      {row.keptIds.map((id) => (
        <div key={id}>
          <a href={`/kept-entries/${id}`}>{say('paper-row-kept')}</a>
        </div>
      ))}
      {row.state === 'begun' ? <strong>{say(`paper-row-open-${row.openEnd?.of ?? 'tip'}`)}</strong> : null}
    </>
  );
}

/** What an entry is about, as far as it has a name, and what it says of it. */
function Thing({
  entry,
  facts,
  things,
}: {
  readonly entry: KeyedEntry;
  readonly facts: PaperFormFacts;
  readonly things: ReadonlyMap<string, string>;
}): VNode {
  const name = things.get(entry.subjectId);
  return (
    <>
      {name === undefined ? null : <a href={`/thread?code=${encodeURIComponent(name)}`}>{name}</a>}{' '}
      <small>{detailsOf(entry, facts)}</small>
    </>
  );
}

function detailsOf({ action, after, subjectId }: KeyedEntry, { checks = [] }: PaperFormFacts): string {
  const facts = Object.fromEntries(
    Object.entries(after).map(([name, value]) => [
      name,
      typeof value === 'string' || typeof value === 'number' ? value : null,
    ]),
  );
  switch (action) {
    case 'stop-line':
      return say(`stop-reason-${wordIn(after, 'reason')}`);
    case 'build-pallet':
      return say('paper-detail-packs', facts);
    case 'count-loose-packs':
      return say('paper-detail-loose', facts);
    case 'count-packs':
      return say('paper-detail-packs', { packCount: countIn(after['counts']) });
    case 'check-line': {
      const check = checks.find(({ planId }) => planId === subjectId);
      return `${check?.letter ?? '–'} · ${check?.title ?? '–'}: ${say(after['passed'] === true ? 'check-passed' : 'check-failed')}`;
    }
    case 'remove-sugar':
      return say(`removal-kind-${wordIn(after, 'kind')}`);
    default:
      return '';
  }
}

function countIn(counts: unknown): number | null {
  const [first] = Array.isArray(counts) ? (counts as readonly { packCount?: number }[]) : [];
  return first?.packCount ?? null;
}

/** Who wrote it, and who keyed it in where that was somebody else. */
function Who({
  entry,
  names,
}: {
  readonly entry: KeyedEntry | null;
  readonly names: ReadonlyMap<string, string>;
}): VNode | null {
  if (entry === null) return null;
  const keyedBy = names.get(entry.keyedBy ?? '') ?? '–';
  if (entry.action === strikeAction) return <>{say('paper-row-struck-by', { by: keyedBy })}</>;
  if (entry.writtenBy === null) return <>{say('paper-row-own', { by: keyedBy })}</>;
  const writer = entry.writtenBy === notKnown ? say('writer-not-known') : (names.get(entry.writtenBy) ?? '–');
  return <>{say('paper-row-by', { writer, by: keyedBy })}</>;
}

/** All rows that are still blank are struck at once: nothing was written on them. */
function StrikeRest({ viewer, form, trouble, row }: PaperSheetProps): VNode | null {
  const blank = form.rows.filter(({ state }) => state === 'blank');
  if (blank.length === 0) return null;
  return (
    <details class="card" id="strike">
      <summary>{say('paper-strike-rest', { count: blank.length })}</summary>
      <EntryForm
        viewer={viewer}
        action={`/paper-forms/${form.facts.number}/strikes`}
        trouble={row === null ? trouble : null}
        id="strike-rest"
      >
        <TextEntry
          name="reason"
          label={say('paper-strike-why')}
          value={say('paper-strike-nothing')}
          maxLength={300}
          required
          trouble={row === null ? trouble : null}
        />
        <Act says={say('paper-strike-rest-act', { count: blank.length })} tone="careful" />
      </EntryForm>
    </details>
  );
}
