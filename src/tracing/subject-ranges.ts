import { loadedUnitsOf } from '../dispatch/deliveries.js';
import { rangesOfBag } from '../hopper/hopper-links.js';
import { filmRanges, rangesOfLot, runOf } from '../packing/packing-runs.js';
import type { RunCounts } from '../packing/packing-run-rows.js';
import { spreadOf } from '../pallets/pallet-spread.js';
import { coderClockAt, coderOfLine, siteOf } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { united, type RunRange } from '../packing/run-ranges.js';
import { countsByRun } from './packed-parts.js';
import type { ThreadSubject } from './thread.js';
import { certainRange, possibleRange, timesOfRange, type TimeWindow } from '../packing/ranges-in-time.js';
import { windowsOfPrintedTime, type ClockReading } from './window-in-ranges.js';

/** The packs that a subject is, or may be; and the part that it surely is, which *least* rests on. */
export interface SubjectRanges {
  readonly possible: readonly RunRange[];
  readonly certain: readonly RunRange[];
}

/** Which packs a subject is. Of a bag: the packs that may hold some of it. */
export async function rangesOfSubject(from: ReadFrom, siteId: string, subject: ThreadSubject): Promise<SubjectRanges> {
  switch (subject.kind) {
    case 'lot':
      return lotPacks(from, siteId, subject);
    case 'packing-run': {
      const run = await runOf(from, subject.id);
      return exactly(run.packCount > 0 ? [{ runId: run.id, fromCount: 0, toCount: run.packCount }] : []);
    }
    case 'film-lot':
      return exactly(await closedRanges(from, await filmRanges(from, subject.id)));
    case 'pallet':
      return spreadOf(from, subject.id);
    case 'delivery':
      return deliveredPacks(from, subject.id);
    case 'bulk-bag':
      return exactly(united(await rangesOfBag(from, subject.id)));
  }
}

function exactly(ranges: readonly RunRange[]): SubjectRanges {
  return { possible: ranges, certain: ranges };
}

async function deliveredPacks(from: ReadFrom, deliveryId: string): Promise<SubjectRanges> {
  const { palletIds } = await loadedUnitsOf(from, deliveryId);
  const spreads = [];
  for (const palletId of palletIds) spreads.push(await spreadOf(from, palletId));
  return {
    possible: united(spreads.flatMap((spread) => spread.possible)),
    certain: united(spreads.flatMap((spread) => spread.certain)),
  };
}

/** A range that still goes on ends at the run's last count. */
async function closedRanges(from: ReadFrom, ranges: readonly RunCounts[]): Promise<RunRange[]> {
  const closed: RunRange[] = [];
  for (const { runId, fromCount, toCount } of ranges) {
    const end = toCount ?? (await runOf(from, runId)).packCount;
    if (fromCount < end) closed.push({ runId, fromCount, toCount: end });
  }
  return closed;
}

/** A lot whole, or the packs that may carry a printed time of day: by the coder's own clock, widened by its doubt. */
async function lotPacks(from: ReadFrom, siteId: string, subject: ThreadSubject): Promise<SubjectRanges> {
  const all = await rangesOfLot(from, subject.id);
  const within = subject.codedBetween;
  const meant = all.filter(
    (range) => within === null || (range.changedAt >= within.fromAt && range.changedAt <= within.untilAt),
  );
  const ranges = await closedRanges(from, meant);
  if (subject.localTime === null) return exactly(ranges);
  const printedTime = subject.localTime;
  const { timeZone } = await siteOf(from, siteId);
  const counts = await countsByRun(from, ranges);
  const possible: RunRange[] = [];
  const certain: RunRange[] = [];
  for (const range of ranges) {
    const own = counts.get(range.runId) ?? [];
    const span = timesOfRange(range, own);
    if (span === null) continue;
    const clocks = await clocksWithin(from, (await runOf(from, range.runId)).lineId, span);
    const windows = clocks.flatMap((clock) => windowsOfPrintedTime(printedTime, span, timeZone, clock));
    for (const window of windows) {
      pushKnown(possible, possibleRange(range, own, window));
      // Where the clock was set meanwhile, no pack is sure: it may carry the minute of either setting.
      if (clocks.length === 1) pushKnown(certain, certainRange(range, own, window));
    }
  }
  return { possible: united(possible), certain: united(certain) };
}

function pushKnown(ranges: RunRange[], range: RunRange | null): void {
  if (range !== null) ranges.push(range);
}

/** How the coder of a line stood at the beginning and at the end of a time: one reading, or two where it was set between. */
async function clocksWithin(from: ReadFrom, lineId: string, span: TimeWindow): Promise<readonly ClockReading[]> {
  const coder = await coderOfLine(from, lineId);
  if (coder === null) return [{ offsetSeconds: 0, uncertaintySeconds: 0 }];
  const begin = await coderClockAt(from, coder.id, span.fromAt);
  const end = await coderClockAt(from, coder.id, span.untilAt);
  const isSame = begin.offsetSeconds === end.offsetSeconds && begin.uncertaintySeconds === end.uncertaintySeconds;
  return isSame ? [begin] : [begin, end];
}
