import { unitItLooksLike, type UnitMeant } from '../../core/units/unit-it-looks-like.js';
import { takingTurns } from '../../platform/taking-turns.js';
import { instantOf } from '../kept/instants-of-weights.js';
import type { PackWeigherRow } from '../pack-weighers.js';
import type { LineFaults } from './line-faults.js';
import { fault, type LineFault } from './sent-weight.js';
import { unitMistaken, type UnitCounts } from './unit-check.js';
import { clockLeewayCentiseconds, isFault, type RunNamed, type WeighedRun } from './weighed-runs.js';
import type { WeightRows } from './weight-rows.js';

/** More than two packs at once on the belt weigh less than this. Our own value, no source. */
const mostTimesNominal = 3;

/** What a batch is held against. */
export interface BatchFacts {
  readonly weigher: PackWeigherRow;
  /** The texts that the batch names as lines. */
  readonly lineTexts: readonly string[];
  /** What the batch names as runs, in the order of their numbers. */
  readonly named: readonly RunNamed[];
  /** What lines without a run are of, by the query or by their time. */
  readonly unnamed: RunNamed | readonly WeighedRun[];
  readonly nowCentiseconds: number;
}

/** Rows that can be taken, and each one's run among `runs`. */
export interface CheckedWeights {
  readonly places: Uint32Array;
  /** By the row's place. */
  readonly runOfRow: Uint16Array;
  readonly runs: readonly WeighedRun[];
}

/** Rows between two looks at whether others want their turn. */
const rowsAtOnce = 10_000;

/** Holds every row against its run, its line and the clock; between parts of a large batch others have their turn. */
export async function checkWeights(rows: WeightRows, facts: BatchFacts, faults: LineFaults): Promise<CheckedWeights> {
  const found: Found = {
    places: new Uint32Array(rows.count),
    runOfRow: new Uint16Array(rows.count),
    runs: [],
    count: 0,
  };
  const wrongLines = facts.lineTexts.map((text) => lineFault(text, facts.weigher));
  const turn = takingTurns();
  for (let from = 0; from < rows.count; from += rowsAtOnce) {
    checkRows(rows, { from, to: Math.min(rows.count, from + rowsAtOnce) }, { ...facts, wrongLines, faults, found });
    await turn();
  }
  const { places, count, runOfRow, runs } = found;
  const weighed = await checkNets(rows, { places: places.subarray(0, count), runOfRow, runs }, faults);
  return { places: weighed, runOfRow, runs };
}

/** What was found so far: the first `count` places are those of rows that can be taken. */
interface Found extends CheckedWeights {
  readonly runs: WeighedRun[];
  count: number;
}

interface RowsHeld extends BatchFacts {
  /** Null where a text names the weigher's own line. */
  readonly wrongLines: readonly (LineFault | null)[];
  readonly faults: LineFaults;
  readonly found: Found;
}

function checkRows(rows: WeightRows, { from, to }: { readonly from: number; readonly to: number }, held: RowsHeld) {
  const { wrongLines, faults, found } = held;
  const { atCentiseconds, lines, lineNumbers } = rows;
  let [number, last, earliest, latest]: [number, WeighedRun | null, number, number] = [0, null, 0, 0];
  for (let row = from; row < to; row += 1) {
    const run = runOf(rows, row, held);
    const line = lines[row] as number;
    const wrongLine = line === 0 ? null : (wrongLines[line - 1] ?? null);
    // Almost every row is of the run of the row before.
    if (run !== last && !isFault(run)) {
      number = placeAmong(found.runs, run);
      last = run;
      earliest = run.fromCentiseconds - clockLeewayCentiseconds;
      latest = Math.min(held.nowCentiseconds, run.untilCentiseconds) + clockLeewayCentiseconds;
    }
    const at = atCentiseconds[row] as number;
    if (run === last && wrongLine === null && at >= earliest && at <= latest) {
      found.runOfRow[row] = number;
      found.places[found.count] = row;
      found.count += 1;
      continue;
    }
    const wrong = wrongLine ?? (isFault(run) ? run : timeFault(at, run, held));
    faults.add(lineNumbers[row] as number, wrong);
  }
}

/** Where a run stands among some; it is put behind them where it was none of them. */
function placeAmong(runs: WeighedRun[], run: WeighedRun): number {
  const known = runs.indexOf(run);
  return known < 0 ? runs.push(run) - 1 : known;
}

function runOf(rows: WeightRows, row: number, { named, unnamed }: BatchFacts): RunNamed {
  const number = rows.runs[row] as number;
  if (number > 0) return named[number - 1] as RunNamed;
  return Array.isArray(unnamed)
    ? runAt(unnamed as readonly WeighedRun[], rows.atCentiseconds[row] as number)
    : (unnamed as RunNamed);
}

/** The run of a line at a time; one that begins or ended within the clock's leeway, where none was open. */
function runAt(runs: readonly WeighedRun[], at: number): RunNamed {
  let near: WeighedRun | null = null;
  for (const run of runs) {
    if (at >= run.fromCentiseconds && at <= run.untilCentiseconds) return run;
    const away = at < run.fromCentiseconds ? run.fromCentiseconds - at : at - run.untilCentiseconds;
    if (near === null && away <= clockLeewayCentiseconds) near = run;
  }
  return near ?? fault('at', 'weight-without-run', { at: instantText(at) });
}

function lineFault(text: string, weigher: PackWeigherRow): LineFault | null {
  const isOwn = text.toUpperCase() === weigher.lineCode.toUpperCase() || text.toLowerCase() === weigher.lineId;
  return isOwn ? null : fault('line', 'weight-of-other-line', { named: text.slice(0, 60), line: weigher.lineCode });
}

/** Of a time that is ahead of the clock, or outside of its run. */
function timeFault(at: number, run: WeighedRun, { nowCentiseconds }: BatchFacts): LineFault {
  if (at > nowCentiseconds + clockLeewayCentiseconds) {
    return fault('at', 'weight-ahead-of-clock', { at: instantText(at), now: instantText(nowCentiseconds) });
  }
  if (at < run.fromCentiseconds - clockLeewayCentiseconds) {
    return fault('at', 'weight-before-run', { at: instantText(at), run: run.number, startedAt: run.startedAt });
  }
  return fault('at', 'weight-after-run', { at: instantText(at), run: run.number, closedAt: run.closedAt });
}

/** Holds the weights against the nominal quantity of their runs. Answers the places of those that can be weights. */
async function checkNets(
  rows: WeightRows,
  { places, runOfRow, runs }: CheckedWeights,
  faults: LineFaults,
): Promise<Uint32Array> {
  const counts: UnitCounts[] = runs.map(() => ({ packCount: 0, looksLikeKilograms: 0, looksLikeMilligrams: 0 }));
  const { netMilligrams, lineNumbers } = rows;
  for (let place = 0; place < places.length; place += 1) {
    const row = places[place] as number;
    const number = runOfRow[row] as number;
    const tally = counts[number] as UnitCounts;
    const unit = unitItLooksLike(netMilligrams[row] as number, (runs[number] as WeighedRun).nominalMilligrams);
    tally.packCount += 1;
    if (unit === 'kg') tally.looksLikeKilograms += 1;
    if (unit === 'mg') tally.looksLikeMilligrams += 1;
  }
  const mistaken = counts.map(unitMistaken);
  const turn = takingTurns();
  await turn();
  let count = 0;
  for (let place = 0; place < places.length; place += 1) {
    const row = places[place] as number;
    const number = runOfRow[row] as number;
    const wrong = netFault(netMilligrams[row] as number, runs[number] as WeighedRun, mistaken[number] ?? null);
    if (wrong === null) places[count++] = row;
    else faults.add(lineNumbers[row] as number, wrong);
  }
  await turn();
  return places.subarray(0, count);
}

function netFault(net: number, run: WeighedRun, mistaken: UnitMeant | null): LineFault | null {
  const { nominalMilligrams: nominal } = run;
  const isMistaken = mistaken !== null && unitItLooksLike(net, nominal) === mistaken;
  if (!isMistaken && net >= 0 && net <= nominal * mostTimesNominal) return null;
  const facts = { grams: net / 1000, run: run.number, nominalGrams: nominal / 1000 };
  if (isMistaken) {
    return fault('netGrams', mistaken === 'kg' ? 'weight-in-kilograms' : 'weight-in-milligrams', facts);
  }
  if (net < 0) return fault('netGrams', 'weight-below-zero', facts);
  return fault('netGrams', 'weight-absurd', { ...facts, times: mostTimesNominal });
}

/** A time beyond what a date can be is shown as its number. */
function instantText(at: number): string {
  return Math.abs(at) < 8.64e14 ? instantOf(at) : String(at);
}
