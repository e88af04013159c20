import { isUsed } from '../../disposition/is-used.js';
import { standingsOf, type BagStanding } from '../../disposition/standings.js';
import { bagsOf, type BagRow } from '../../drying/bulk-bags.js';
import { laboratoryStandingsOf, type LaboratoryStanding } from '../../laboratory/bag-results.js';
import { dryerOf, gradeOf, shiftAt } from '../../plant/plant-facts.js';
import type { GradeRow } from '../../plant/plant-rows.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { groupBy } from '../../platform/group-by.js';
import { receiptOf } from '../../drying/goods-receipts.js';

/** A bag on which nobody has decided, with what there is to decide by. */
export interface WaitingBag {
  readonly bag: BagRow;
  readonly standing: BagStanding;
  readonly grade: GradeRow;
  readonly laboratory: LaboratoryStanding;
  readonly isUsed: boolean;
  readonly since: Instant;
}

/** Bags that are decided on together: those of a dryer shift and grade, of a receipt, or of the opening stock. */
export interface BagGroup {
  readonly key: string;
  readonly origin: BagRow['origin'];
  /** Code of the dryer, or number of the receipt; null for opening stock. */
  readonly code: string | null;
  readonly shift: { readonly productionOn: string; readonly shiftCode: string } | null;
  readonly grade: GradeRow;
  readonly bags: readonly WaitingBag[];
}

/** A bag that waits longer was forgotten in the records, not in the store: it is found in the list of bags. */
const daysBack = 60;

/** The closed bags of a site on which nobody has decided, the oldest first. */
export async function waitingBagsOf(from: ReadFrom, siteId: string, now: Instant): Promise<readonly WaitingBag[]> {
  const rows = await from.sql<{ id: string }>`
    SELECT b."id" FROM "bulk_bag" b JOIN "bag_state" s ON s."bag_id" = b."id"
    WHERE b."site_id" = ${siteId} AND b."id" > ${firstIdOf(now)} AND b."voided_by" IS NULL AND s."status" <> 'filling'
      AND NOT EXISTS (SELECT 1 FROM "decision" d WHERE d."subject_kind" = 'bulk-bag' AND d."subject_id" = b."id"
        AND d."voided_by" IS NULL AND d."verdict" <> 'waiting')
    UNION SELECT d."subject_id" AS "id" FROM "decision" d
    WHERE d."site_id" = ${siteId} AND d."id" > ${firstIdOf(now)} AND d."subject_kind" = 'bulk-bag'
      AND d."verdict" = 'waiting' AND d."voided_by" IS NULL`;
  const bags = await bagsOf(
    from,
    rows.map(({ id }) => id),
  );
  return waitingOf(from, bags);
}

/** Those of some bags that wait, with what there is to decide by. */
export async function waitingOf(from: ReadFrom, bags: readonly BagRow[]): Promise<readonly WaitingBag[]> {
  const standings = await standingsOf(from, bags);
  const waiting = bags.flatMap((bag) => {
    const standing = standings.get(bag.id);
    return standing?.decision.verdict === 'waiting' ? [{ bag, standing, gradeId: standing.gradeId }] : [];
  });
  const laboratory = await laboratoryStandingsOf(from, waiting);
  const grades = new Map<string, GradeRow>();
  for (const { gradeId } of waiting) {
    if (!grades.has(gradeId)) grades.set(gradeId, await gradeOf(from, gradeId));
  }
  return waiting
    .flatMap(({ bag, standing, gradeId }) => {
      const [grade, known] = [grades.get(gradeId), laboratory.get(bag.id)];
      if (grade === undefined || known === undefined) return [];
      const since = bag.filledAt ?? bag.fillStartedAt;
      return [{ bag, standing, grade, laboratory: known, isUsed: isUsed(bag), since }];
    })
    .sort((one, other) => (one.since + one.bag.id < other.since + other.bag.id ? -1 : 1));
}

/** Waiting bags as they are decided on together; groups in the order of their oldest bag. */
export async function bagGroupsOf(
  from: ReadFrom,
  siteId: string,
  waiting: readonly WaitingBag[],
): Promise<readonly BagGroup[]> {
  const placed: { readonly bag: WaitingBag; readonly key: string; readonly shift: BagGroup['shift'] }[] = [];
  for (const bag of waiting) {
    const { dryerId, receiptId } = bag.bag;
    const shift = dryerId === null ? null : await shiftAt(from, siteId, bag.since);
    const own = shift === null ? (receiptId ?? 'opening') : `${dryerId ?? ''}.${shift.productionOn}.${shift.shiftCode}`;
    placed.push({ bag, shift, key: `${own}.${bag.grade.id}` });
  }
  const groups: BagGroup[] = [];
  for (const [key, own] of groupBy(placed, (one) => one.key)) {
    const [first] = own;
    if (first === undefined) continue;
    const { bag, grade } = first.bag;
    const code = await codeOf(from, bag);
    groups.push({ key, origin: bag.origin, code, shift: first.shift, grade, bags: own.map((one) => one.bag) });
  }
  return groups;
}

async function codeOf(from: ReadFrom, bag: BagRow): Promise<string | null> {
  if (bag.dryerId !== null) return (await dryerOf(from, bag.dryerId)).code;
  return bag.receiptId === null ? null : (await receiptOf(from, bag.siteId, bag.receiptId)).number;
}

/** Ids begin with the milliseconds of their making (RFC 9562, version 7), so that they can be told by age. */
function firstIdOf(now: Instant): string {
  const hex = Math.max(0, Date.parse(now) - daysBack * 86_400_000)
    .toString(16)
    .padStart(12, '0');
  return `${hex.slice(0, 8)}-${hex.slice(8)}`;
}
