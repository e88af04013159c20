import { setImmediate } from 'node:timers/promises';
import { lotRangesOfRuns } from '../packing/packing-runs.js';
import { runsOfLineWithin, type RunOfLine } from '../packing/run-lists.js';
import { packsIn, type RunRange } from '../packing/run-ranges.js';
import type { LotRange } from '../packing/packing-run-rows.js';
import { palletsOfRanges } from '../pallets/pallet-list.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import type { ChangedReading } from './changed-readings.js';
import { linesOfPallets } from './pallet-lines.js';
import type { ChangedLot, ChangedPallet } from './ripple.js';
import type { PalletLine } from './thread.js';

/** So many pallets are read at a time: others take their turn in between. Our own value, no source. */
const palletsAtATime = 200;

/** Lots and pallets whose packs a printed time leads to otherwise than before. */
interface RereadPacks {
  readonly lots: readonly ChangedLot[];
  readonly pallets: readonly ChangedPallet[];
}

/** What is on packs stays, and so do their bags: only what a printed time says of them is another. */
const unchanged = { sources: [], byGrams: 0 };

type Look = <Seen>(work: (from: ReadFrom) => Promise<Seen>) => Promise<Seen>;

/** The lots that were coded while a clock is now taken to have stood otherwise, and the pallets of their packs. */
export async function rereadPacks(look: Look, readings: readonly ChangedReading[]): Promise<RereadPacks> {
  const coded = new Map<string, CodedRange>();
  for (const reading of readings) {
    const own = await look((from) => codedWithin(from, reading));
    for (const range of own) coded.set(`${range.runId} ${range.fromCount}`, range);
  }
  const ranges = [...coded.values()];
  const lots = [...groupBy(ranges, ({ lotId }) => lotId)].map(([lotId, own]) => {
    const packCount = packsIn(own);
    return { lotId, code: own[0]?.code ?? '', packCountBefore: packCount, packCountAfter: packCount, ...unchanged };
  });
  const placed = await look((from) => palletsOfRanges(from, ranges));
  const palletIds = [...new Set(placed.map(({ palletId }) => palletId))];
  const pallets: ChangedPallet[] = [];
  for (let start = 0; start < palletIds.length; start += palletsAtATime) {
    const own = palletIds.slice(start, start + palletsAtATime);
    pallets.push(...(await look((from) => linesOf(from, own))).map(rereadPallet));
    await setImmediate();
  }
  return { lots, pallets: pallets.sort((one, other) => Number(other.isGone) - Number(one.isGone)) };
}

type CodedRange = RunRange & Pick<LotRange, 'lotId' | 'code'>;

/** The packs of each lot that were coded, all or in part, within the time of a changed reading. */
async function codedWithin(from: ReadFrom, reading: ChangedReading): Promise<readonly CodedRange[]> {
  const runs = await runsOfLineWithin(from, reading);
  const coded = await inChunks(
    runs.map(({ id }) => id),
    (chunk) => lotRangesOfRuns(from, chunk),
  );
  const byRun = groupBy(coded, ({ runId }) => runId);
  return runs.flatMap((run) => codedInRun(run, byRun.get(run.id) ?? [], reading));
}

function codedInRun(
  { packCount, endedAt }: RunOfLine,
  ranges: readonly LotRange[],
  { fromAt, untilAt }: ChangedReading,
): readonly CodedRange[] {
  return ranges.flatMap(({ runId, lotId, code, changedAt, fromCount, toCount }, place) => {
    const codedUntilAt = ranges[place + 1]?.changedAt ?? endedAt;
    const isWithin = codedUntilAt > fromAt && (untilAt === null || changedAt < untilAt);
    const end = toCount ?? packCount;
    return isWithin && fromCount < end ? [{ runId, lotId, code, fromCount, toCount: end }] : [];
  });
}

const blank = { leastGrams: 0, likelyGrams: 0, mostGrams: 0, word: 'possible', isSubject: true } as const;

function linesOf(from: ReadFrom, palletIds: readonly string[]): Promise<readonly PalletLine[]> {
  return linesOfPallets(
    from,
    palletIds.map((palletId) => ({ palletId, ...blank })),
  );
}

function rereadPallet(line: PalletLine): ChangedPallet {
  const { palletId, sscc, status, placeCode, deliveryId, deliveryNumber, customerName, lotCodes } = line;
  const none = { packsBefore: [], packsAfter: [], filmCodesBefore: [], filmCodesAfter: [], heldBy: [], freedOf: [] };
  return {
    ...{ palletId, sscc, status, isGone: status === 'dispatched', placeCode, deliveryId, deliveryNumber, customerName },
    ...{ ...none, lotCodesBefore: lotCodes, lotCodesAfter: lotCodes, ...unchanged },
  };
}
