import { deliveriesOf, deliveriesOfUnits } from '../dispatch/deliveries.js';
import { bagOf, bagsOf } from '../drying/bulk-bags.js';
import { bagsOfLinerLot } from '../drying/liner-lots.js';
import { meanNetsOf } from '../fill-weight/mean-nets.js';
import { reachOfBags } from '../hopper/group-reach.js';
import { linksByBag, sourcesAndRuledOut, type RuledOutInPeriod } from '../hopper/hopper-links.js';
import { periodsOfBag } from '../hopper/hopper-period-rows.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { loadedUnitsOf } from '../dispatch/deliveries.js';
import { returnsAmong } from '../dispatch/returns.js';
import type { RunRange } from '../packing/run-ranges.js';
import { recentRepeatability } from '../laboratory/recent-repeats.js';
import { expectedQualities } from './expected-qualities.js';
import { lineEvents } from './line-events.js';
import { packedParts } from './packed-parts.js';
import { customersOf, palletLines, type SoldBag } from './pallet-lines.js';
import { ruledOutLines } from './ruled-out-lines.js';
import { dryerShiftsOf, sourceLines, type BagAmounts } from './source-lines.js';
import { printedTimesOf, rangesOfSubject, type SubjectRanges } from './subject-ranges.js';
import type { Thread, ThreadSubject } from './thread.js';

/**
 * The thread of a subject both ways: the bags it came from with least, likely and most, their dryer shifts and results;
 * and the pallets and customers that may have got the same sugar. Read in one snapshot.
 *
 * @throws {NotFound} when the subject is not known
 */
export async function readThread(from: ReadFrom, siteId: string, subject: ThreadSubject, now: string): Promise<Thread> {
  const ranges = await rangesOfSubject(from, siteId, subject);
  const group = await sourceGroup(from, siteId, subject, ranges);
  const reach = await reachOfBags(
    from,
    group.links.map((link) => link.bagId),
    group.periodIds,
  );
  const { sources, results } = await sourceLines(from, siteId, group.links);
  const own = isOfBags(subject) ? [] : ranges.possible;
  const packed = await packedParts(from, siteId, ranges.possible);
  const pallets = await palletLines(from, reach, own);
  return {
    subject,
    printedTimes: await printedTimesOf(from, siteId, subject),
    packed,
    sources,
    results,
    ruledOut: await ruledOutLines(from, group.ruledOut, reach.models),
    expected: isOfBags(subject) ? [] : expectedQualities({ sources, results }, await recentRepeatability(from, siteId)),
    dryerShifts: dryerShiftsOf(sources),
    pallets,
    customers: customersOf(
      pallets,
      await soldBags(
        from,
        group.links.map((link) => link.bagId),
      ),
    ),
    returns: await returnsAmong(from, {
      palletIds: pallets.map(({ palletId }) => palletId),
      bagIds: group.links.map(({ bagId }) => bagId),
      lotIds: [...new Set(packed.flatMap(({ lotId }) => (lotId === null ? [] : [lotId])))],
    }),
    lineEvents: isOfBags(subject) ? [] : await lineEvents(from, packed),
    subjectGrams: await gramsOf(from, siteId, subject, ranges.possible),
    models: reach.models,
    readAt: now,
  };
}

interface SourceGroup {
  readonly links: readonly BagAmounts[];
  readonly periodIds: readonly string[];
  readonly ruledOut: readonly RuledOutInPeriod[];
}

/** The bags that a subject may hold sugar of. A bag is its own source; a delivery also has the bags sold whole. */
async function sourceGroup(
  from: ReadFrom,
  siteId: string,
  subject: ThreadSubject,
  ranges: SubjectRanges,
): Promise<SourceGroup> {
  if (isOfBags(subject)) return wholeBags(from, await bagsOfSubject(from, siteId, subject));
  const { links: found, ruledOut } = await sourcesAndRuledOut(from, ranges.possible, { certain: ranges.certain });
  const links: BagAmounts[] = [];
  for (const [bagId, { word, ...amounts }] of linksByBag(found)) {
    if (word !== 'ruled-out') links.push({ bagId, ...amounts, word });
  }
  if (subject.kind === 'delivery') {
    for (const bagId of (await loadedUnitsOf(from, subject.id)).bagIds) links.push(await wholeBag(from, bagId));
  }
  return { links, periodIds: [...new Set(found.map((link) => link.periodId))], ruledOut };
}

/** A bag is its own source, and so are the bags of a liner lot. */
export function isOfBags({ kind }: ThreadSubject): boolean {
  return kind === 'bulk-bag' || kind === 'liner-lot';
}

async function bagsOfSubject(from: ReadFrom, siteId: string, { kind, id }: ThreadSubject): Promise<readonly string[]> {
  return kind === 'liner-lot' ? bagsOfLinerLot(from, siteId, id) : [id];
}

async function wholeBags(from: ReadFrom, bagIds: readonly string[]): Promise<SourceGroup> {
  const links: BagAmounts[] = [];
  const periodIds = new Set<string>();
  for (const bagId of bagIds) {
    links.push(await wholeBag(from, bagId));
    for (const periodId of await periodsOfBag(from, bagId)) periodIds.add(periodId);
  }
  return { links, periodIds: [...periodIds], ruledOut: [] };
}

async function wholeBag(from: ReadFrom, bagId: string): Promise<BagAmounts> {
  const bag = await bagOf(from, bagId);
  const likelyGrams = bag.netGrams ?? 0;
  return { bagId, leastGrams: bag.lowerGrams, likelyGrams, mostGrams: bag.upperGrams, word: 'sure' };
}

async function soldBags(from: ReadFrom, bagIds: readonly string[]): Promise<readonly SoldBag[]> {
  const rows = await deliveriesOfUnits(from, { palletIds: [], bagIds });
  const deliveries = await deliveriesOf(
    from,
    rows.map(({ deliveryId }) => deliveryId),
  );
  const seen = new Set<string>();
  return rows.flatMap(({ bagId, deliveryId }): SoldBag[] => {
    const delivery = deliveries.get(deliveryId);
    if (bagId === null || seen.has(bagId) || delivery === undefined) return [];
    seen.add(bagId);
    const { customerId, customerName, customerCode, noteNumber, orderNumber } = delivery;
    return [{ customerId, customerName: customerName ?? customerCode, deliveryNumber: noteNumber ?? orderNumber }];
  });
}

/** The sugar of the subject: packs times mean net with its limits, or a bag's weighed net. */
async function gramsOf(
  from: ReadFrom,
  siteId: string,
  subject: ThreadSubject,
  ranges: readonly RunRange[],
): Promise<Thread['subjectGrams']> {
  if (isOfBags(subject)) {
    const bags = await bagsOf(from, await bagsOfSubject(from, siteId, subject));
    const sum = (grams: readonly number[]): number => grams.reduce((total, one) => total + one, 0);
    return {
      lowerGrams: sum(bags.map(({ lowerGrams }) => lowerGrams)),
      grams: sum(bags.map(({ netGrams }) => netGrams ?? 0)),
      upperGrams: sum(bags.map(({ upperGrams }) => upperGrams)),
    };
  }
  const means = await meanNetsOf(from, [...new Set(ranges.map((range) => range.runId))]);
  const total = { lower: 0, mean: 0, upper: 0 };
  for (const { runId, fromCount, toCount } of ranges) {
    const mean = means.get(runId);
    const packCount = toCount - fromCount;
    total.lower += packCount * (mean?.lowerMilligrams ?? 0);
    total.mean += packCount * (mean?.meanMilligrams ?? 0);
    total.upper += packCount * (mean?.upperMilligrams ?? 0);
  }
  return {
    lowerGrams: Math.floor(total.lower / 1000),
    grams: Math.round(total.mean / 1000),
    upperGrams: Math.ceil(total.upper / 1000),
  };
}
