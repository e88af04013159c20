import { bagOriginsOf, type BagOrigin } from '../drying/bag-origins.js';
import { standingsOf } from '../disposition/standings.js';
import { byTimeOfAnalysis, resultsOfBagRows, type BagResult } from '../laboratory/bag-results.js';
import { dryerOf, shiftAt } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import type { Amounts, ShiftName, SourceLine, Thread } from './thread.js';

/** The amounts of a bag in the subject. */
export interface BagAmounts extends Amounts {
  readonly bagId: string;
}

/** What is known of the bags of some links: shift, results, decision; the surest and largest first. */
export async function sourceLines(
  from: ReadFrom,
  siteId: string,
  links: readonly BagAmounts[],
): Promise<Pick<Thread, 'sources' | 'results'>> {
  const bags = await bagOriginsOf(
    from,
    links.map((link) => link.bagId),
  );
  const results = await resultsOfBagRows(from, bags);
  const facts = new Map((await bagFacts(from, siteId, bags, results)).map((line) => [line.bagId, line]));
  const lines = links.flatMap((link) => {
    const known = facts.get(link.bagId);
    return known === undefined ? [] : [lineOf(known, link)];
  });
  return {
    sources: lines.sort(
      (a, b) => b.leastGrams - a.leastGrams || b.likelyGrams - a.likelyGrams || b.mostGrams - a.mostGrams,
    ),
    results: [...new Set([...results.values()].flat())].sort(byTimeOfAnalysis),
  };
}

type BagFacts = Omit<SourceLine, keyof Amounts>;

/** Field by field: a thread names hundreds of bags, and a spread takes several times as long. */
function lineOf(bag: BagFacts, { leastGrams, likelyGrams, mostGrams, word }: BagAmounts): SourceLine {
  return {
    bagId: bag.bagId,
    bagNumber: bag.bagNumber,
    sscc: bag.sscc,
    netGrams: bag.netGrams,
    dryerCode: bag.dryerCode,
    dryerShift: bag.dryerShift,
    filledAt: bag.filledAt,
    supplierLot: bag.supplierLot,
    sampleIds: bag.sampleIds,
    decision: bag.decision,
    isOnHold: bag.isOnHold,
    isDoubtful: bag.isDoubtful,
    leastGrams,
    likelyGrams,
    mostGrams,
    word,
  };
}

async function bagFacts(
  from: ReadFrom,
  siteId: string,
  bags: readonly BagOrigin[],
  results: ReadonlyMap<string, readonly BagResult[]>,
): Promise<BagFacts[]> {
  const standings = await standingsOf(from, bags);
  const dryers = await codesOf(
    bags.map((bag) => bag.dryerId),
    async (id) => (await dryerOf(from, id)).code,
  );
  const receipts = await codesOf(
    bags.map((bag) => bag.receiptId),
    (id) => supplierLotOf(from, id),
  );
  const lines: BagFacts[] = [];
  for (const bag of bags) {
    const standing = standings.get(bag.id);
    lines.push({
      bagId: bag.id,
      bagNumber: bag.number,
      sscc: bag.sscc,
      netGrams: bag.netGrams,
      dryerCode: dryers.get(bag.dryerId ?? '') ?? null,
      dryerShift: bag.dryerId === null ? null : await shiftOf(from, siteId, bag.filledAt ?? bag.fillStartedAt),
      filledAt: bag.filledAt,
      supplierLot: receipts.get(bag.receiptId ?? '') ?? null,
      sampleIds: [...new Set(results.get(bag.id)?.map(({ sampleId }) => sampleId))],
      decision: standing?.decision.verdict ?? 'waiting',
      isOnHold: standing?.isOnHold ?? false,
      isDoubtful: bag.isDoubtful,
    });
  }
  return lines;
}

async function shiftOf(from: ReadFrom, siteId: string, at: string): Promise<ShiftName> {
  const { productionOn, shiftCode } = await shiftAt(from, siteId, at);
  return { productionOn, shiftCode };
}

async function codesOf(
  ids: readonly (string | null)[],
  read: (id: string) => Promise<string>,
): Promise<Map<string, string>> {
  const codes = new Map<string, string>();
  for (const id of new Set(ids)) if (id !== null) codes.set(id, await read(id));
  return codes;
}

async function supplierLotOf(from: ReadFrom, receiptId: string): Promise<string> {
  const [row] = await from.sql<{ supplierCode: string; supplierLot: string }>`
    SELECT "supplier_code" AS "supplierCode", "supplier_lot" AS "supplierLot" FROM "goods_receipt" WHERE "id" = ${receiptId}`;
  return row === undefined ? '' : `${row.supplierCode} ${row.supplierLot}`;
}

/** The dryer shifts of the bags, with how many bags each gave. */
export function dryerShiftsOf(sources: readonly SourceLine[]): Thread['dryerShifts'] {
  const grouped = groupBy(
    sources.filter((source) => source.dryerShift !== null),
    (source) =>
      `${source.dryerShift?.productionOn ?? ''} ${source.dryerShift?.shiftCode ?? ''} ${source.dryerCode ?? ''}`,
  );
  return [...grouped.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, lines]) => ({
      productionOn: lines[0]?.dryerShift?.productionOn ?? '',
      shiftCode: lines[0]?.dryerShift?.shiftCode ?? '',
      dryerCode: lines[0]?.dryerCode ?? '',
      bagCount: lines.length,
    }));
}
