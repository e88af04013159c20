import { runOf } from '../packing/packing-runs.js';
import type { RunRange } from '../packing/run-ranges.js';
import { clockReadingsWithin } from '../plant/coder-clocks.js';
import { coderOfLine, siteOf } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { countsByRun } from './packed-parts.js';
import { certainRange, possibleRange, timesOfRange, type CountAt, type TimeWindow } from '../packing/ranges-in-time.js';
import { windowsOfPrintedTime, type ClockReading, type PrintedTime, type PrintedWindow } from './window-in-ranges.js';

/**
 * The packs of these ranges that may carry a printed time of day: by each coder's own clock, as it stood at any
 * time of the range. Empty where none of them can.
 */
export async function printedTimesIn(
  from: ReadFrom,
  siteId: string,
  ranges: readonly RunRange[],
  localTime: string,
): Promise<readonly PrintedTime[]> {
  const { timeZone } = await siteOf(from, siteId);
  const counts = await countsByRun(from, ranges);
  const found: PrintedTime[] = [];
  for (const range of ranges) {
    const own = counts.get(range.runId) ?? [];
    const span = timesOfRange(range, own);
    if (span === null) continue;
    const { lineId, lineCode } = await runOf(from, range.runId);
    const { coderCode, clocks } = await clocksWithin(from, lineId, span);
    // Where the clock was set meanwhile, no pack is sure: it may carry the minute of either setting.
    const isSure = clocks.length === 1;
    for (const clock of clocks) {
      const windows = windowsOfPrintedTime(localTime, span, timeZone, clock);
      const packs = windows.flatMap((window) => packsWithin(range, own, window) ?? []);
      const coder = { runId: range.runId, lineCode, coderCode, clock };
      found.push(...packs.map(({ certain, ...one }) => ({ ...coder, ...one, certain: isSure ? certain : null })));
    }
  }
  return found;
}

/** The packs of a range that were packed within a window, as far as counts tell; null: none can be. */
function packsWithin(
  range: RunRange,
  counts: readonly CountAt[],
  { printedAt, ...window }: PrintedWindow,
): Pick<PrintedTime, 'printedAt' | 'window' | 'possible' | 'certain'> | null {
  const possible = possibleRange(range, counts, window);
  return possible === null ? null : { printedAt, window, possible, certain: certainRange(range, counts, window) };
}

interface CoderClocks {
  readonly coderCode: string | null;
  /** One reading, or more where the clock was set or compared anew meanwhile. */
  readonly clocks: readonly ClockReading[];
}

/** How the coder of a line stood in the course of a time. */
async function clocksWithin(from: ReadFrom, lineId: string, span: TimeWindow): Promise<CoderClocks> {
  const coder = await coderOfLine(from, lineId);
  if (coder === null) return { coderCode: null, clocks: [{ offsetSeconds: 0, uncertaintySeconds: 0 }] };
  return { coderCode: coder.code, clocks: await clockReadingsWithin(from, coder.id, span) };
}
