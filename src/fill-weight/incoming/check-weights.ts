import { unitItLooksLike, type UnitMeant } from '../../core/units/unit-it-looks-like.js';
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

/** Holds every row against its run, its line and the clock. */
export function checkWeights(rows: WeightRows, facts: BatchFacts, faults: LineFaults): CheckedWeights {
  const runs: WeighedRun[] = [];
  const numberOf = new Map<WeighedRun, number>();
  const runOfRow = new Uint16Array(rows.count);
  const wrongLines = facts.lineTexts.map((text) => lineFault(text, facts.weigher));
  const places = new Uint32Array(rows.count);
  let count = 0;
  for (let row = 0; row < rows.count; row += 1) {
    const run = runOf(rows, row, facts);
    const wrong =
      wrongLines[(rows.lines[row] as number) - 1] ?? (isFault(run) ? run : timeFault(rows, row, run, facts));
    if (wrong !== null || isFault(run)) {
      faults.add(rows.lineNumbers[row] as number, wrong ?? (run as LineFault));
      continue;
    }
    let number = numberOf.get(run);
    if (number === undefined) {
      number = runs.push(run) - 1;
      numberOf.set(run, number);
    }
    runOfRow[row] = number;
    places[count] = row;
    count += 1;
  }
  const weighed = checkNets(rows, { places: places.subarray(0, count), runOfRow, runs }, faults);
  return { places: weighed, runOfRow, runs };
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

function timeFault(rows: WeightRows, row: number, run: WeighedRun, { nowCentiseconds }: BatchFacts): LineFault | null {
  const at = rows.atCentiseconds[row] as number;
  if (at > nowCentiseconds + clockLeewayCentiseconds) {
    return fault('at', 'weight-ahead-of-clock', { at: instantText(at), now: instantText(nowCentiseconds) });
  }
  if (at < run.fromCentiseconds - clockLeewayCentiseconds) {
    return fault('at', 'weight-before-run', { at: instantText(at), run: run.number, startedAt: run.startedAt });
  }
  if (at <= run.untilCentiseconds + clockLeewayCentiseconds) return null;
  return fault('at', 'weight-after-run', { at: instantText(at), run: run.number, closedAt: run.closedAt });
}

/** Holds the weights against the nominal quantity of their runs. Answers the places of those that can be weights. */
function checkNets(
  rows: WeightRows,
  { places, runOfRow, runs }: { places: Uint32Array; runOfRow: Uint16Array; runs: readonly WeighedRun[] },
  faults: LineFaults,
): Uint32Array {
  const counts: UnitCounts[] = runs.map(() => ({ packCount: 0, looksLikeKilograms: 0, looksLikeMilligrams: 0 }));
  for (const row of places) {
    const number = runOfRow[row] as number;
    const tally = counts[number] as UnitCounts;
    const unit = unitItLooksLike(rows.netMilligrams[row] as number, (runs[number] as WeighedRun).nominalMilligrams);
    tally.packCount += 1;
    if (unit === 'kg') tally.looksLikeKilograms += 1;
    if (unit === 'mg') tally.looksLikeMilligrams += 1;
  }
  const mistaken = counts.map(unitMistaken);
  let count = 0;
  for (const row of places) {
    const number = runOfRow[row] as number;
    const wrong = netFault(rows.netMilligrams[row] as number, runs[number] as WeighedRun, mistaken[number] ?? null);
    if (wrong === null) places[count++] = row;
    else faults.add(rows.lineNumbers[row] as number, wrong);
  }
  return places.subarray(0, count);
}

function netFault(net: number, run: WeighedRun, mistaken: UnitMeant | null): LineFault | null {
  const { nominalMilligrams: nominal } = run;
  const facts = { grams: net / 1000, run: run.number, nominalGrams: nominal / 1000 };
  if (mistaken !== null && unitItLooksLike(net, nominal) === mistaken) {
    return fault('netGrams', mistaken === 'kg' ? 'weight-in-kilograms' : 'weight-in-milligrams', facts);
  }
  if (net < 0) return fault('netGrams', 'weight-below-zero', facts);
  return net > nominal * mostTimesNominal
    ? fault('netGrams', 'weight-absurd', { ...facts, times: mostTimesNominal })
    : null;
}

/** A time beyond what a date can be is shown as its number. */
function instantText(at: number): string {
  return Math.abs(at) < 8.64e14 ? instantOf(at) : String(at);
}
