import { shiftAt } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import type { CountPoint } from '../packing/run-course.js';
import { coursesOf } from '../packing/run-courses.js';
import { lotRangesOfRuns, runOf } from '../packing/packing-runs.js';
import { united, type RunRange } from '../packing/run-ranges.js';
import type { PackedPart, ShiftName } from './thread.js';
import { timesOfRange, type TimeWindow } from '../packing/ranges-in-time.js';

/** Where, when and with which code the packs of these ranges were packed: one part for each run and code. */
export async function packedParts(from: ReadFrom, siteId: string, ranges: readonly RunRange[]): Promise<PackedPart[]> {
  const runIds = [...new Set(ranges.map((range) => range.runId))];
  const counts = await coursesOf(from, runIds);
  const lots = groupBy(await lotRangesOfRuns(from, runIds), (lot) => lot.runId);
  const parts: PackedPart[] = [];
  for (const range of united(ranges)) {
    const run = await runOf(from, range.runId);
    for (const piece of splitByLot(range, lots.get(range.runId) ?? [])) {
      const when = timesOfRange(piece, counts.get(range.runId) ?? []);
      parts.push({
        ...piece,
        runNumber: run.number,
        lineCode: run.lineCode,
        formatName: run.formatName,
        when,
        packingShifts: when === null ? [] : await shiftsWithin(from, siteId, when),
      });
    }
  }
  return parts;
}

/** The counts of the runs of some ranges, by run. */
export async function countsByRun(
  from: ReadFrom,
  ranges: readonly RunRange[],
): Promise<ReadonlyMap<string, readonly CountPoint[]>> {
  return coursesOf(
    from,
    ranges.map((range) => range.runId),
  );
}

/** The production shifts that a window of time touches, in order. */
export async function shiftsWithin(from: ReadFrom, siteId: string, window: TimeWindow): Promise<ShiftName[]> {
  const shifts: ShiftName[] = [];
  let at = window.fromAt;
  do {
    const shift = await shiftAt(from, siteId, at);
    shifts.push({ productionOn: shift.productionOn, shiftCode: shift.shiftCode });
    at = shift.endsAt;
  } while (at < window.untilAt && shifts.length < 100);
  return shifts;
}

interface LotPiece extends RunRange {
  readonly lotId: string | null;
  readonly lotCode: string | null;
}

interface LotSpan {
  readonly lotId: string;
  readonly code: string;
  readonly fromCount: number;
  readonly toCount: number | null;
}

/** A range cut where the code on the packs changed; packs before the first known code have none. */
function splitByLot(range: RunRange, lots: readonly LotSpan[]): LotPiece[] {
  const pieces: LotPiece[] = [];
  let at = range.fromCount;
  for (const lot of lots) {
    const fromCount = Math.max(at, lot.fromCount);
    const toCount = Math.min(range.toCount, lot.toCount ?? range.toCount);
    if (fromCount >= toCount) continue;
    if (at < fromCount)
      pieces.push({ runId: range.runId, fromCount: at, toCount: fromCount, lotId: null, lotCode: null });
    pieces.push({ runId: range.runId, fromCount, toCount, lotId: lot.lotId, lotCode: lot.code });
    at = toCount;
  }
  if (at < range.toCount)
    pieces.push({ runId: range.runId, fromCount: at, toCount: range.toCount, lotId: null, lotCode: null });
  return pieces;
}
