import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, TextEntry } from '../../platform/web/kit/entries.js';
import type { ShiftChoices } from './hold-times.js';

interface TimesProps {
  readonly shifts: ShiftChoices;
  readonly next: string | null;
}

/** A hold by time: a shift by its day and name, or minutes of a run. */
export function HoldTimes(props: TimesProps): VNode {
  return (
    <>
      <ShiftBox {...props} />
      <MinutesBox {...props} />
    </>
  );
}

function ShiftBox({ shifts: { places, shiftCodes, today }, next }: TimesProps): VNode {
  return (
    <details class="card">
      <summary>{say('hold-new-shift')}</summary>
      <form class="entry" method="get" action="/quality/holds/new">
        <p>{say('hold-new-shift-says')}</p>
        <ChoiceEntry
          name="place"
          label={say('hold-new-place')}
          choices={places.map(({ value, kind, code }) => ({ value, says: `${say(`scope-${kind}`)} ${code}` }))}
          required
        />
        <TextEntry name="on" label={say('hold-new-on')} type="date" value={today} required />
        <ChoiceEntry
          name="shift"
          label={say('hold-new-shift-code')}
          choices={shiftCodes.map((code) => ({ value: code, says: code }))}
          required
        />
        {next === null ? null : <HiddenEntry name="next" value={next} />}
        <Act says={say('hold-new-find')} tone="plain" />
      </form>
    </details>
  );
}

function MinutesBox({ next }: TimesProps): VNode {
  return (
    <details class="card">
      <summary>{say('hold-new-minutes')}</summary>
      <form class="entry" method="get" action="/quality/holds/new">
        <TextEntry name="run" label={say('hold-new-run')} isCode maxLength={60} required />
        {(['from', 'until'] as const).map((name) => (
          <div key={name} class="field">
            <label for={name}>{say(`hold-new-${name}`)}</label>
            <input id={name} name={name} type="datetime-local" required />
          </div>
        ))}
        {next === null ? null : <HiddenEntry name="next" value={next} />}
        <Act says={say('hold-new-find')} tone="plain" />
      </form>
    </details>
  );
}
