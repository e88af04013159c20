import type { VNode } from 'preact';
import { formatKilograms } from '../core/units/grams.js';
import type { WeighingRow } from '../drying/bag-weighings.js';
import type { BagRow } from '../drying/bulk-bags.js';
import type { LaboratoryStanding } from '../laboratory/bag-results.js';
import { propertyText } from '../laboratory/sample-text.js';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import { ActLink } from '../platform/web/kit/act.js';
import { Figures } from '../platform/web/kit/figures.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark } from '../platform/web/state-mark.js';
import type { AssignmentLine, DecisionLine } from './decisions.js';
import { HoldLink } from './hold-link.js';
import type { HoldRow } from './standings.js';
import type { StateWord } from './worst-state.js';

/** A bag as its page shows it. */
export interface WholeBag {
  readonly bag: BagRow;
  readonly state: StateWord;
  readonly gradeName: string;
  /** Number of the dryer run or the receipt; null for opening stock. */
  readonly originNumber: string | null;
  readonly placeCode: string | null;
  readonly weighings: readonly WeighingRow[];
  readonly laboratory: LaboratoryStanding;
  readonly decisions: readonly DecisionLine[];
  readonly assignments: readonly AssignmentLine[];
  readonly holds: readonly HoldRow[];
}

/** One bag: its numbers, weights, results, decisions and holds. */
export function bagPage({ viewer, whole }: { viewer: Viewer; whole: WholeBag }): VNode {
  const { bag } = whole;
  return (
    <Shell title={say('bag-title', { bag: bag.number })} viewer={viewer}>
      <p>
        <StateMark state={whole.state} />
        {bag.isDoubtful ? <StateMark state="doubtful" /> : null}
      </p>
      <p class="caution">{say('caution-hanging-bags')}</p>
      {bag.isDoubtful ? <p class="caution">{say('caution-doubtful-weight')}</p> : null}
      <div class="acts">
        <ActLink href={`/thread?code=${bag.number}`} says={say('bag-thread')} />
        <HoldLink viewer={viewer} kind="bulk-bag" id={bag.id} />
      </div>
      <BagFigures whole={whole} timeZone={viewer.timeZone} />
      <Holds holds={whole.holds} timeZone={viewer.timeZone} />
      <Results laboratory={whole.laboratory} timeZone={viewer.timeZone} />
      <Decisions whole={whole} timeZone={viewer.timeZone} />
      <Weighings weighings={whole.weighings} viewer={viewer} />
    </Shell>
  );
}

function BagFigures({ whole, timeZone }: { whole: WholeBag; timeZone: string }): VNode {
  const { bag } = whole;
  const range = {
    least: formatKilograms(bag.lowerGrams, { thousands: true }),
    most: formatKilograms(bag.upperGrams, { thousands: true }),
  };
  const facts: readonly (readonly [string, string])[] = [
    ['bag-sscc', bag.sscc],
    ['bag-grade', whole.gradeName],
    ['bag-origin', whole.originNumber ?? say('bag-opening-stock')],
    ['bag-where', [say(`bag-status-${bag.status}`), ...(whole.placeCode === null ? [] : [whole.placeCode])].join(', ')],
    ['bag-net', bag.netGrams === null ? say('bag-not-weighed') : formatKilograms(bag.netGrams, { thousands: true })],
    ['bag-limits', say('bag-limits-text', range)],
    ['bag-left', formatKilograms(bag.remainingGrams, { thousands: true })],
    ['bag-safe-load', formatKilograms(bag.safeLoadGrams, { thousands: true })],
    ['bag-filled', bag.filledAt === null ? say('bag-not-closed-yet') : localText(bag.filledAt, timeZone)],
    ['bag-liner', bag.linerLot ?? '–'],
  ];
  return <Figures of={facts.map(([code, value]) => ({ label: say(code), value }))} />;
}

function Holds({ holds, timeZone }: { holds: readonly HoldRow[]; timeZone: string }): VNode {
  return (
    <section>
      <h2>{say('bag-holds')}</h2>
      {holds.length === 0 ? <p>{say('bag-no-holds')}</p> : null}
      <ul>
        {holds.map((hold) => (
          <li key={hold.id}>
            <a href={`/holds/${hold.id}`}>{hold.number}</a> {say(`hazard-${hold.hazard}`)},{' '}
            {localText(hold.placedAt, timeZone)}: {hold.reason}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Results({ laboratory, timeZone }: { laboratory: LaboratoryStanding; timeZone: string }): VNode {
  const outside = new Set(laboratory.outsideResults.map(({ id }) => id));
  return (
    <section>
      <h2>{say('bag-results')}</h2>
      <p>{say(`laboratory-${laboratory.verdict}`, { missing: laboratory.missing.map(propertyText).join(', ') })}</p>
      {laboratory.results.length === 0 ? null : (
        <Table
          caption={say('bag-results-caption')}
          columns={[
            { head: say('bag-column-property') },
            { head: say('bag-column-figure'), align: 'number' },
            { head: say('bag-column-method') },
            { head: say('bag-column-sample') },
            { head: say('bag-column-time') },
            { head: say('bag-column-verdict') },
          ]}
          rows={laboratory.results.map((result) => ({
            key: result.id,
            isLoud: outside.has(result.id),
            cells: [
              propertyText(result.property),
              result.amount,
              result.method,
              <>
                <a href={`/samples/${result.sampleId}`}>{result.sampleNumber}</a>{' '}
                {say(`stands-for-${result.standsFor}`)}
              </>,
              localText(result.analysedAt, timeZone),
              outside.has(result.id) ? say('result-outside') : '',
            ],
          }))}
        />
      )}
    </section>
  );
}

function Decisions({ whole, timeZone }: { whole: WholeBag; timeZone: string }): VNode {
  return (
    <section>
      <h2>{say('bag-decisions')}</h2>
      {whole.decisions.length === 0 ? <p>{say('bag-undecided')}</p> : null}
      <ul>
        {whole.decisions.map((decision) => (
          <li key={decision.id}>
            {localText(decision.decidedAt, timeZone)}: {say(`state-${decision.verdict}`)}
            {decision.reason === null ? '' : ` (${decision.reason})`}
          </li>
        ))}
        {whole.assignments.map((assignment) => (
          <li key={assignment.id}>
            {localText(assignment.assignedAt, timeZone)}:{' '}
            {say('bag-assigned', { grade: assignment.gradeName, reason: assignment.reason })}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Weighings({ weighings, viewer }: { weighings: readonly WeighingRow[]; viewer: Viewer }): VNode {
  const { timeZone } = viewer;
  const mayCorrect = mayDo(viewer.actor.roles, 'correct');
  return (
    <section>
      <h2>{say('bag-weighings')}</h2>
      <Table
        caption={say('bag-weighings-caption')}
        columns={[
          { head: say('bag-column-occasion') },
          { head: say('bag-column-gross'), align: 'number' },
          { head: say('bag-column-tare'), align: 'number' },
          { head: say('bag-column-net'), align: 'number' },
          { head: say('bag-column-scale') },
          { head: say('bag-column-time') },
          { head: say('bag-column-note') },
          ...(mayCorrect ? [{ head: say('weighing-correct-head') }] : []),
        ]}
        rows={weighings.map((weighing) => ({
          key: weighing.id,
          cells: [
            say(`occasion-${weighing.occasion}`),
            formatKilograms(weighing.grossGrams, { thousands: true }),
            formatKilograms(weighing.tareGrams, { thousands: true }),
            formatKilograms(weighing.netGrams, { thousands: true }),
            weighing.scaleCode,
            localText(weighing.weighedAt, timeZone),
            notesOn(weighing),
            ...(mayCorrect ? [<Correct weighing={weighing} timeZone={timeZone} />] : []),
          ],
        }))}
      />
    </section>
  );
}

/** What was weighed back belongs to its tip, and is corrected there. */
function Correct({ weighing, timeZone }: { weighing: WeighingRow; timeZone: string }): VNode | null {
  if (weighing.isVoid || weighing.occasion === 'weighed-back') return null;
  const says = say('weighing-correct-one', { at: localText(weighing.weighedAt, timeZone) });
  return (
    <a href={`/bag-weighings/${weighing.id}/correct`} aria-label={says}>
      {say('weighing-correct-head')}
    </a>
  );
}

function notesOn(weighing: WeighingRow): string {
  const notes = [
    ...(weighing.isVoid ? [say('weighing-void')] : []),
    ...(weighing.isPresetTare ? [say('weighing-preset')] : []),
    ...(weighing.isDoubtful ? [say('weighing-doubtful')] : []),
  ];
  return notes.join(', ');
}
