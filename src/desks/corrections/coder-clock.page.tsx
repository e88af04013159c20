import type { VNode } from 'preact';
import { clockSentence } from '../../plant/clock-text.js';
import type { ComparedClock } from '../../plant/coder-clocks.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { NumberEntry, TextEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { CorrectionPage, type OneProps } from './correction.page.js';

interface CoderClockProps {
  readonly viewer: Viewer;
  readonly lineId: string;
  readonly line: string;
  /** Null: nothing prints codes on the line. */
  readonly coder: string | null;
  /** The last first. */
  readonly clocks: readonly ComparedClock[];
  /** What holds before anything was compared. */
  readonly uncomparedSeconds: number;
  readonly mayCompare: boolean;
  readonly mayCorrect: boolean;
  readonly now: string;
  readonly trouble: FormTrouble | null;
}

/** How a coder's clock stood and stands, each comparison with the way to put it right; and a new one. */
export function coderClockPage(props: CoderClockProps): VNode {
  const { viewer, line, coder, clocks, mayCompare, uncomparedSeconds } = props;
  if (coder === null) {
    return (
      <Shell title={say('clock-title-of-line', { line })} viewer={viewer}>
        <p class="sentence">{say('clock-no-coder', { line })}</p>
      </Shell>
    );
  }
  return (
    <Shell title={say('clock-title', { coder, line })} viewer={viewer}>
      <p>{say('clock-says')}</p>
      {clocks.length === 0 ? (
        <p class="sentence">{say('clock-never', { uncertainty: uncomparedSeconds })}</p>
      ) : (
        <Comparisons {...props} />
      )}
      {mayCompare ? <Compare {...props} /> : null}
    </Shell>
  );
}

function Comparisons({ viewer, clocks, mayCorrect }: CoderClockProps): VNode {
  return (
    <Table
      caption={say('clock-list')}
      columns={[
        { head: say('clock-since-head') },
        { head: say('clock-stood') },
        ...(mayCorrect ? [{ head: say('counts-list-correct') }] : []),
      ]}
      rows={clocks.map((clock) => {
        const at = localText(clock.validFrom, viewer.timeZone);
        const correct = (
          <a href={`/coder-clocks/${clock.id}/correct`} aria-label={say('clock-correct-one', { at })}>
            {say('counts-list-correct')}
          </a>
        );
        return { key: clock.id, cells: [at, clockSentence(clock), ...(mayCorrect ? [correct] : [])] };
      })}
    />
  );
}

function Compare({ viewer, lineId, now, trouble }: CoderClockProps): VNode {
  const { timeZone } = viewer;
  return (
    <>
      <h2>{say('clock-compare')}</h2>
      <EntryForm viewer={viewer} action={`/lines/${lineId}/coder-clock`} trouble={trouble}>
        <div class="side-by-side">
          <TimeEntry
            name="shownAt"
            label={say('clock-shown')}
            hint={say('clock-shown-hint')}
            at={now}
            isToTheSecond
            {...{ timeZone, trouble }}
          />
          <TimeEntry
            name="referenceAt"
            label={say('clock-reference')}
            hint={say('clock-reference-hint')}
            isToTheSecond
            {...{ timeZone, trouble }}
          />
        </div>
        <NumberEntry
          name="uncertaintySeconds"
          label={say('clock-uncertainty')}
          hint={say('clock-uncertainty-hint')}
          unit="s"
          required
          trouble={trouble}
        />
        <TimeEntry
          name="validFrom"
          label={say('clock-since')}
          hint={say('clock-since-hint')}
          {...{ timeZone, trouble }}
        />
        <TextEntry
          name="reason"
          label={say('field-late-reason')}
          hint={say('field-late-reason-hint')}
          maxLength={300}
          trouble={trouble}
        />
        <Act says={say('line-record')} />
      </EntryForm>
    </>
  );
}

export function clockCorrectionPage(props: OneProps & { readonly coder: string; readonly line: string }): VNode {
  const { viewer, coder, line, trouble } = props;
  const asItWas = { hint: say('correction-as-it-was'), timeZone: viewer.timeZone, trouble };
  return (
    <CorrectionPage {...props} title={say('correction-of-clock', { coder, line })}>
      <div class="side-by-side">
        <TimeEntry name="shownAt" label={say('correction-clock-shown')} isToTheSecond {...asItWas} />
        <TimeEntry name="referenceAt" label={say('correction-clock-reference')} isToTheSecond {...asItWas} />
      </div>
      <NumberEntry
        name="uncertaintySeconds"
        label={say('clock-uncertainty')}
        hint={say('correction-as-it-was')}
        unit="s"
        trouble={trouble}
      />
      <TimeEntry name="validFrom" label={say('correction-clock-since')} {...asItWas} />
    </CorrectionPage>
  );
}
