import type { VNode } from 'preact';
import { recallMarks } from '../../recalls/recall-words.js';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { HiddenEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { localText } from '../../platform/web/local-text.js';
import type { RecallRow } from '../../recalls/recalls.js';
import type { RecallFileProps } from './recall-file-props.js';

/** Minutes between two instants, begun ones counted: a clock of a recall is read, not measured. */
export function minutesBetween(from: string, until: string): number {
  return Math.ceil((Date.parse(until) - Date.parse(from)) / 60_000);
}

/** When a recall began, and how long each of its moments took; those still to come can be marked. */
export function ClockBox({ viewer, file, trouble, mayRun }: RecallFileProps & { readonly mayRun: boolean }): VNode {
  const { recall, readAt, names } = file;
  const at = momentsOf(recall);
  const runs = recall.stoppedAt === null;
  const minutes = minutesBetween(recall.startedAt, recall.stoppedAt ?? readAt);
  return (
    <section class="card" aria-labelledby="clock">
      <h2 id="clock">{say('recall-clock')}</h2>
      <p class="sentence">
        {say(runs ? 'recall-clock-runs' : 'recall-clock-stopped', {
          at: localText(recall.startedAt, viewer.timeZone),
          who: names.get(recall.openedBy ?? '') ?? say('recall-report-not-stated'),
          minutes,
        })}
      </p>
      <dl class="facts">
        {recallMarks.map((mark) => (
          <>
            <dt>{say(`recall-mark-${mark}`)}</dt>
            <dd>{momentText(recall, at[mark], viewer.timeZone)}</dd>
          </>
        ))}
      </dl>
      {mayRun ? (
        <div class="acts">
          {recallMarks
            .filter((mark) => at[mark] === null)
            .map((mark) => (
              <EntryForm
                key={mark}
                viewer={viewer}
                id={`mark-${mark}`}
                class="one-touch"
                action={`/quality/recalls/${recall.id}/marks`}
                trouble={trouble?.of === mark ? trouble.form : null}
              >
                <HiddenEntry name="mark" value={mark} />
                <Act says={say(`recall-mark-do-${mark}`)} tone={mark === 'clock-stopped' ? 'asked' : 'plain'} />
              </EntryForm>
            ))}
        </div>
      ) : null}
    </section>
  );
}

function momentText(recall: RecallRow, at: string | null, timeZone: string): string {
  if (at === null) return say('recall-not-yet');
  return say('recall-after', { at: localText(at, timeZone), minutes: minutesBetween(recall.startedAt, at) });
}

function momentsOf(recall: RecallRow) {
  return {
    'customers-listed': recall.customersListedAt,
    'stock-blocked': recall.stockBlockedAt,
    'clock-stopped': recall.stoppedAt,
  } as const;
}
