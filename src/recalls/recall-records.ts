import { changesAbout, type ChangeLine } from '../disposition/changes-to-look-at.js';
import { holdsEverOn, type HoldLine } from '../disposition/holds.js';
import { bagsOf, type BagRow } from '../drying/bulk-bags.js';
import { samplesOfBags } from '../laboratory/samples.js';
import { checksOfLineBetween } from '../line-checks/line-checks.js';
import { runOf } from '../packing/packing-runs.js';
import type { TimeWindow } from '../packing/ranges-in-time.js';
import { shifted } from '../platform/clock.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { kilograms, printedTime } from '../platform/printing/printed-figures.js';
import type { PackedPart } from '../tracing/thread.js';
import { threadLink } from '../tracing/thread-text.js';
import type { RecallLink } from './recall-links.js';

/** A record that belongs in the file of a recall, and where it is. */
export interface RecallRecord {
  readonly kind: string;
  readonly number: string;
  readonly link: string;
}

/** What of a recall says which records belong in its file. */
interface Recalled {
  readonly links: readonly RecallLink[];
  readonly packed: readonly PackedPart[];
  readonly units: readonly { readonly id: string }[];
  readonly removals: readonly { readonly id: string }[];
}

/** Checks of a line so long before and after the packs belong to them: the good ones on either side among them. */
const nearMilliseconds = 30 * 60_000;

/**
 * Every record that belongs in the file, once, with where it is: what the thread goes through, the samples that stand
 * for its bags, the checks of its lines around its packs, and every hold that was ever on any of it.
 */
export async function recordsOf(
  from: ReadFrom,
  { siteId, timeZone }: { readonly siteId: string; readonly timeZone: string },
  recalled: Recalled,
): Promise<readonly RecallRecord[]> {
  const bags = await bagsOfLinks(from, siteId, recalled.links);
  const lines = await linesOf(from, recalled.packed);
  return [
    ...recordsOfLinks(recalled),
    ...(await removalRecords(from, recalled, timeZone)),
    ...(await samplesOfBags(from, bags)).map(({ id, number }) => {
      return { kind: 'sample', number, link: `/samples/${id}` };
    }),
    ...(await checksOf(from, lines, timeZone)),
    ...(await holdsOf(from, recalled, { bags, lines })),
  ];
}

function recordsOfLinks({ links }: Recalled): readonly RecallRecord[] {
  const records = new Map<string, RecallRecord>();
  const put = (kind: string, number: string, link = threadLink(number)): void => {
    if (number !== '') records.set(`${kind} ${number}`, { kind, number, link });
  };
  for (const { step, parent, child } of links) {
    if (step === 'bag-run') put('bulk-bag', parent);
    if (step === 'bag-run') put('packing-run', child);
    if (step === 'run-lot') put('packing-run', parent);
    if (step === 'run-lot') put('lot', child);
    if (step === 'lot-pallet') put('pallet', child);
    if (step === 'unit-delivery') put('delivery', child);
  }
  return [...records.values()];
}

/** What was taken away has no number: its line, time and mass name it, and the page of its run shows it. */
async function removalRecords(
  from: ReadFrom,
  { removals }: Recalled,
  timeZone: string,
): Promise<readonly RecallRecord[]> {
  const rows = await inChunks(
    removals.map(({ id }) => id),
    (chunk) => from.sql<{ runId: string; lineCode: string; grams: number; removedAt: string }>`
      SELECT m."run_id" AS "runId", l."code" AS "lineCode", m."grams", m."removed_at" AS "removedAt"
      FROM "removal" m JOIN "packing_line" l ON l."id" = m."line_id"
      WHERE m."id" IN (${() => chunk}) ORDER BY m."removed_at", m."id"`,
  );
  return rows.map(({ runId, lineCode, grams, removedAt }) => ({
    kind: 'removal',
    number: `${lineCode} ${printedTime(removedAt, timeZone)}, ${kilograms(grams)} kg`,
    link: `/runs/${runId}`,
  }));
}

async function bagsOfLinks(from: ReadFrom, siteId: string, links: readonly RecallLink[]): Promise<readonly BagRow[]> {
  const numbers = links.flatMap(({ step, parent }) => (step === 'bag-run' ? [parent] : []));
  const rows = await inChunks(
    numbers,
    (chunk) => from.sql<{ id: string }>`
      SELECT "id" FROM "bulk_bag" WHERE "site_id" = ${siteId} AND "number" IN (${() => chunk})`,
  );
  return bagsOf(
    from,
    rows.map(({ id }) => id),
  );
}

/** When a line packed some of it. */
interface LineTime extends TimeWindow {
  readonly lineId: string;
  readonly lineCode: string;
}

async function linesOf(from: ReadFrom, packed: readonly PackedPart[]): Promise<readonly LineTime[]> {
  const times: LineTime[] = [];
  for (const { runId, lineCode, when } of packed) {
    if (when !== null) times.push({ lineId: (await runOf(from, runId)).lineId, lineCode, ...when });
  }
  return times;
}

async function checksOf(
  from: ReadFrom,
  lines: readonly LineTime[],
  timeZone: string,
): Promise<readonly RecallRecord[]> {
  const records = new Map<string, RecallRecord>();
  for (const { lineId, lineCode, fromAt, untilAt } of lines) {
    const [first, last] = [shifted(fromAt, -nearMilliseconds), shifted(untilAt, nearMilliseconds)];
    for (const { id, station, occurredAt } of await checksOfLineBetween(from, lineId, first, last)) {
      const number = `${lineCode} ${station}, ${printedTime(occurredAt, timeZone)}`;
      records.set(id, { kind: 'line-check', number, link: `/checks/${id}` });
    }
  }
  return [...records.values()];
}

/** Holds on its things, lifted ones too; of shifts those of whose time some of it is. */
async function holdsOf(
  from: ReadFrom,
  { packed, units }: Recalled,
  { bags, lines }: { readonly bags: readonly BagRow[]; readonly lines: readonly LineTime[] },
): Promise<readonly RecallRecord[]> {
  const holds = await holdsEverOn(from, [
    ...packed.flatMap(({ runId, lotId }) => (lotId === null ? [runId] : [runId, lotId])),
    ...units.map(({ id }) => id),
    ...bags.flatMap(({ id, dryerRunId, dryerId }) => [id, ...[dryerRunId, dryerId].filter((one) => one !== null)]),
    ...lines.map(({ lineId }) => lineId),
  ]);
  const isOfIt = ({ scopeKind, scopeId, fromAt, untilAt }: HoldLine): boolean => {
    if (fromAt === null || untilAt === null) return true;
    if (scopeKind === 'dryer-shift') {
      return bags.some(
        ({ dryerId, filledAt }) => dryerId === scopeId && filledAt !== null && fromAt <= filledAt && filledAt < untilAt,
      );
    }
    if (scopeKind !== 'packing-shift') return true;
    return lines.some((line) => line.lineId === scopeId && line.fromAt < untilAt && line.untilAt > fromAt);
  };
  const own = new Map(holds.filter(isOfIt).map((hold) => [hold.number, hold]));
  return [...own.values()].map(({ id, number }) => ({ kind: 'hold', number, link: `/holds/${id}` }));
}

/** Corrections and late entries of what a recall rests on: its runs, pallets and bags; all, in the order of recording. */
export async function changesOfRecall(
  from: ReadFrom,
  siteId: string,
  figures: {
    readonly parts: readonly { readonly runId: string }[];
    readonly units: readonly { readonly id: string }[];
  },
): Promise<readonly ChangeLine[]> {
  const ids = new Set([...figures.parts.map(({ runId }) => runId), ...figures.units.map(({ id }) => id)]);
  return (await changesAbout(from, siteId, [...ids], null)).toReversed();
}
