import { loadedUnitsOf } from '../dispatch/deliveries.js';
import { bagsOfLinerLot } from '../drying/liner-lots.js';
import { rangesOfBag } from '../hopper/hopper-links.js';
import { filmRanges, rangesOfLot, runOf } from '../packing/packing-runs.js';
import type { RunCounts } from '../packing/packing-run-rows.js';
import { spreadOf } from '../pallets/pallet-spread.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { united, type RunRange } from '../packing/run-ranges.js';
import { countsByRun } from './packed-parts.js';
import { printedTimesIn } from './printed-times.js';
import type { ThreadSubject } from './thread.js';
import { timesOfRange, type TimeWindow } from '../packing/ranges-in-time.js';
import type { PrintedTime } from './window-in-ranges.js';

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
    case 'liner-lot': {
      const bagIds = await bagsOfLinerLot(from, siteId, subject.id);
      const ranges = [];
      for (const bagId of bagIds) ranges.push(...(await rangesOfBag(from, bagId)));
      return exactly(united(ranges));
    }
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
  const ranges = await rangesOfUse(from, subject);
  if (subject.localTime === null) return exactly(ranges);
  const times = await printedTimesOf(from, siteId, subject);
  return {
    possible: united(times.map(({ possible }) => possible)),
    certain: united(times.flatMap(({ certain }) => certain ?? [])),
  };
}

/** When the coders may have printed the time that a lot's packs are asked for with; empty for all that has no time. */
export async function printedTimesOf(
  from: ReadFrom,
  siteId: string,
  subject: ThreadSubject,
): Promise<readonly PrintedTime[]> {
  if (subject.kind !== 'lot' || subject.localTime === null) return [];
  const times = await printedTimesIn(from, siteId, await rangesOfUse(from, subject), subject.localTime);
  return times.filter(({ printedAt }) => subject.printedAt === null || printedAt === subject.printedAt);
}

/** When the packs of a lot were packed, as far as counts tell; null: nothing was counted. */
export async function timesOfSubject(from: ReadFrom, subject: ThreadSubject): Promise<TimeWindow | null> {
  const ranges = await rangesOfUse(from, subject);
  const counts = await countsByRun(from, ranges);
  const spans = ranges.flatMap((range) => timesOfRange(range, counts.get(range.runId) ?? []) ?? []);
  const [first] = spans.map(({ fromAt }) => fromAt).sort();
  const last = spans
    .map(({ untilAt }) => untilAt)
    .sort()
    .at(-1);
  return first === undefined || last === undefined ? null : { fromAt: first, untilAt: last };
}

/** Where the packs of a lot are; of a code that came back, those of the use that is meant. */
async function rangesOfUse(from: ReadFrom, { id, codedBetween }: ThreadSubject): Promise<RunRange[]> {
  const all = await rangesOfLot(from, id);
  return closedRanges(
    from,
    all.filter(
      ({ changedAt }) =>
        codedBetween === null || (changedAt >= codedBetween.fromAt && changedAt <= codedBetween.untilAt),
    ),
  );
}
