import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { clockText, localText } from '../../platform/web/local-text.js';
import { mayBeKept } from './keep-written-row.js';
import { notKnown } from './paper-form.form.js';
import { AllPassed, CheckChoice } from './check-fields.js';
import { RowFields } from './row-fields.js';
import type { RowFormProps } from './row-form-props.js';

/** One row as it was written: time, what it says, who wrote it; or that it says nothing. */
export function RowForm(props: RowFormProps): VNode {
  const { viewer, form, row, trouble } = props;
  const at = `/paper-forms/${form.facts.number}/rows/${row.row}`;
  const isBegun = row.state === 'begun';
  const end = row.openEnd?.of === 'stop' ? 'restart' : 'tip-end';
  return (
    <section id="row" class="card">
      <h2>{say(isBegun ? 'paper-row-end-title' : 'paper-row-title', { row: row.row })}</h2>
      {isBegun ? <p>{say(`paper-row-open-${row.openEnd?.of ?? 'tip'}`)}</p> : null}
      {form.facts.kind === 'checks' && props.plan === null ? (
        <CheckChoice form={form} row={row} trouble={trouble} />
      ) : (
        <EntryForm viewer={viewer} action={`${at}/${isBegun ? end : form.facts.kind}`} trouble={trouble} id="key-in">
          {isBegun ? null : <WhenAndWho {...props} />}
          <RowFields {...props} />
          <div class="acts">
            {form.facts.kind === 'checks' ? <AllPassed {...props} /> : null}
            <Act says={say('paper-row-record', { row: row.row })} />
            {isBegun || trouble === null || trouble.status === 422 || !mayBeKept(trouble.code) ? null : (
              <Act says={say('paper-row-keep')} name="keep" value="as-written" tone="careful" />
            )}
          </div>
        </EntryForm>
      )}
      {isBegun || !mayDo(viewer.actor.roles, 'keep-paper-forms') ? null : <Strike viewer={viewer} at={at} row={row} />}
    </section>
  );
}

function WhenAndWho({ viewer, form, row, people, until, trouble }: RowFormProps): VNode {
  const { timeZone } = viewer;
  const last = form.rows.filter((one) => one.row < row.row && one.state !== 'struck').at(-1)?.entries[0];
  const writer = last === undefined ? undefined : (last.writtenBy ?? last.keyedBy ?? undefined);
  const dayBefore = new Date(Date.parse(until) - 86_400_000).toISOString();
  const facts = {
    until: clockText(until, timeZone),
    day: dayText(until, timeZone),
    before: dayText(dayBefore, timeZone),
  };
  return (
    <>
      <div class="side-by-side">
        <TextEntry
          name="time"
          label={say('written-time')}
          hint={say('written-time-hint')}
          isCode
          required
          maxLength={5}
          autofocus
          trouble={trouble}
        />
        <TextEntry
          name="day"
          type="date"
          label={say('written-day')}
          hint={say('written-day-hint', facts)}
          trouble={trouble}
        />
      </div>
      <ChoiceEntry
        name="writtenBy"
        label={say('written-by')}
        choices={[
          ...people.map(({ id, name }) => ({ value: id, says: name })),
          { value: notKnown, says: say('writer-not-known') },
        ]}
        value={writer}
        required
        trouble={trouble}
      />
    </>
  );
}

/** The day of an instant without its clock. */
function dayText(at: string, timeZone: string): string {
  return localText(at, timeZone).replace(/, \d\d:\d\d$/, '');
}

function Strike({ viewer, at, row }: Pick<RowFormProps, 'viewer' | 'row'> & { readonly at: string }): VNode {
  return (
    <details>
      <summary>{say('paper-strike', { row: row.row })}</summary>
      <p class="quiet">
        {say(row.sscc === null ? 'paper-strike-says' : 'paper-strike-number-says', { sscc: row.sscc })}
      </p>
      <EntryForm viewer={viewer} action={`${at}/strike`} id="strike-row">
        <TextEntry
          name="reason"
          label={say('paper-strike-why')}
          value={say('paper-strike-nothing')}
          maxLength={300}
          required
        />
        <Act says={say('paper-strike-act', { row: row.row })} tone="careful" />
      </EntryForm>
    </details>
  );
}
