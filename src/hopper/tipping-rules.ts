import { standingsOf, bagStandingsOf, type BagStanding } from '../disposition/standings.js';
import type { BagRow } from '../drying/bulk-bags.js';
import { recordedBy } from '../journal/recorded-by.js';
import { laboratoryStandingOf } from '../laboratory/bag-results.js';
import { gradeOf, gradesOfFormat, hopperOf, ruleSetAt } from '../plant/plant-facts.js';
import type { GradeRow, HopperRow } from '../plant/plant-rows.js';
import type { TipAtRiskRules } from '../plant/rule-kinds.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Refusal, type SentenceFacts } from '../platform/refusal.js';
import type { BrokenRule } from './broken-rules.js';
import { tipsOfBag } from './tips.js';

/** Where no rules were set: three bags at once, whatever they weigh. Our own value, no source. */
const usualRiskRules: TipAtRiskRules = { mostWaitingBagCount: 3, mostWaitingGrams: 2_000_000_000 };

/** Results take a day; a bag that was tipped so long ago and waits still is not what the limit is about. */
const riskDays = 30;

/** A hopper at an instant. */
export interface AtHopper {
  readonly hopper: HopperRow;
  readonly at: Instant;
}

/**
 * Refuses what cannot be, whatever has happened: only a closed bag that has something in it and has not left can be
 * tipped.
 *
 * @throws {Refusal} `bag-not-closed`, `bag-already-tipped`, `bag-loaded`, `bag-came-back`,
 * `bag-was-destroyed`
 */
export async function refuseUntippable(from: ReadFrom, bag: BagRow): Promise<void> {
  switch (bag.status) {
    case 'full':
    case 'opened':
      return;
    case 'filling':
      throw new Refusal('bag-not-closed', { bag: bag.number });
    case 'loaded':
    case 'dispatched':
      throw new Refusal('bag-loaded', { bag: bag.number });
    case 'returned':
      throw new Refusal('bag-came-back', { bag: bag.number });
    case 'destroyed':
      throw new Refusal('bag-was-destroyed', { bag: bag.number });
    case 'hanging':
    case 'empty':
      throw new Refusal('bag-already-tipped', { bag: bag.number, ...(await lastTipOf(from, bag.id)) });
  }
}

/** When and where a bag was tipped last, and by whom (an id). */
async function lastTipOf(from: ReadFrom, bagId: string): Promise<SentenceFacts> {
  const tip = (await tipsOfBag(from, bagId)).at(-1);
  if (tip === undefined) return { at: null, tippedInto: null, tippedBy: null };
  const { code } = await hopperOf(from, tip.hopperId);
  return { at: tip.openedAt, tippedInto: code, tippedBy: await recordedBy(from, { kind: 'tip', id: tip.id }) };
}

/**
 * Refuses a tip of a part-used bag at a time when, by the records, it hung elsewhere or was still to be tipped there:
 * how much was in it then is not what is in it now.
 *
 * @throws {Refusal} `bag-tipped-since`
 */
export async function refuseTippedSince(from: ReadFrom, bag: BagRow, at: Instant): Promise<void> {
  if (bag.status !== 'opened') return;
  const later = (await tipsOfBag(from, bag.id)).find(({ openedAt, offAt }) => (offAt ?? openedAt) > at);
  if (later === undefined) return;
  const facts = { bag: bag.number, openedAt: later.openedAt, offAt: later.offAt, meantAt: at };
  throw new Refusal('bag-tipped-since', { ...facts, ...(await lastTipOf(from, bag.id)) });
}

/**
 * The rules of the house that tipping a bag would break, the gravest first: rejected, on hold, a grade that a running
 * format does not take (*stop the line*), waiting where only released bags are tipped, and the limits of tipping at
 * risk.
 */
export async function brokenByTipping(from: ReadFrom, bag: BagRow, place: AtHopper): Promise<readonly BrokenRule[]> {
  const standing = (await standingsOf(from, [bag])).get(bag.id);
  if (standing === undefined) return [];
  const grade = await gradeOf(from, standing.gradeId);
  return [
    ...againstDecision(bag, standing),
    ...(await againstFormats(from, { what: bag.number, grade }, place)),
    ...(standing.decision.verdict === 'waiting' ? await againstWaiting(from, { bag, grade }, place) : []),
  ];
}

function againstDecision(bag: BagRow, { decision, holds }: BagStanding): readonly BrokenRule[] {
  const broken: BrokenRule[] = [];
  if (decision.verdict === 'rejected') {
    broken.push({ code: 'bag-rejected', facts: { bag: bag.number, reason: decision.reason } });
  }
  const [hold] = holds;
  if (hold !== undefined) {
    broken.push({ code: 'bag-on-hold', facts: { bag: bag.number, hold: hold.number, reason: hold.reason } });
  }
  return broken;
}

/** Whether something of this grade may go to every line that the hopper feeds now. */
export async function againstFormats(
  from: ReadFrom,
  { what, grade }: { readonly what: string; readonly grade: GradeRow },
  { hopper, at }: AtHopper,
): Promise<readonly BrokenRule[]> {
  for (const run of await runsAt(from, hopper.id, at)) {
    if ((await gradesOfFormat(from, run.formatId)).includes(grade.id)) continue;
    const facts = { bag: what, grade: grade.name, run: run.number, format: run.formatName };
    return [{ code: 'grade-not-taken', facts }];
  }
  return [];
}

async function againstWaiting(
  from: ReadFrom,
  { bag, grade }: { readonly bag: BagRow; readonly grade: GradeRow },
  { at }: AtHopper,
): Promise<readonly BrokenRule[]> {
  if (grade.tippingRule === 'released-only') {
    return [{ code: 'bag-waiting', facts: { bag: bag.number, grade: grade.name } }];
  }
  const { verdict, outside } = await laboratoryStandingOf(from, bag, grade.id);
  if (verdict === 'outside') {
    return [{ code: 'bag-has-bad-result', facts: { bag: bag.number, property: outside[0] ?? null } }];
  }
  const rules = (await ruleSetAt<TipAtRiskRules>(from, bag.siteId, 'tip-at-risk', at)) ?? usualRiskRules;
  const waiting = await waitingAtRisk(from, bag, at);
  const grams = waiting.grams + bag.remainingGrams;
  const isWithin = waiting.bagCount < rules.mostWaitingBagCount && grams <= rules.mostWaitingGrams;
  if (isWithin) return [];
  const { mostWaitingBagCount, mostWaitingGrams } = rules;
  const facts = { bag: bag.number, bagCount: waiting.bagCount, mostWaitingBagCount, mostWaitingGrams };
  return [{ code: 'too-much-at-risk', facts }];
}

/** The bags of the site that were tipped lately and wait for quality still. */
async function waitingAtRisk(
  from: ReadFrom,
  bag: BagRow,
  at: Instant,
): Promise<{ readonly bagCount: number; readonly grams: number }> {
  const rows = await from.sql<{ bagId: string; netGrams: number }>`
    SELECT t."bag_id" AS "bagId", t."net_grams" AS "netGrams" FROM "tip" t
    WHERE t."site_id" = ${bag.siteId} AND t."opened_at" >= ${shifted(at, -riskDays * 86_400_000)}
      AND t."voided_by" IS NULL AND t."bag_id" IS NOT NULL AND t."bag_id" <> ${bag.id}
      AND NOT EXISTS (SELECT 1 FROM "decision" d WHERE d."subject_kind" = 'bulk-bag' AND d."subject_id" = t."bag_id"
        AND d."verdict" <> 'waiting' AND d."voided_by" IS NULL)`;
  const standings = await bagStandingsOf(
    from,
    rows.map(({ bagId }) => bagId),
  );
  const waiting = rows.filter(({ bagId }) => standings.get(bagId)?.decision.verdict === 'waiting');
  const grams = waiting.reduce((sum, { netGrams }) => sum + netGrams, 0);
  return { bagCount: new Set(waiting.map(({ bagId }) => bagId)).size, grams };
}

/** The runs that drew from a hopper at an instant: of each line the last that had begun, where it had not been closed. */
export async function runsAt(
  from: ReadFrom,
  hopperId: string,
  at: Instant,
): Promise<{ readonly id: string; readonly number: string; readonly formatId: string; readonly formatName: string }[]> {
  return from.sql<{ id: string; number: string; formatId: string; formatName: string }>`
    SELECT r."id", r."number", r."format_id" AS "formatId", f."name" AS "formatName"
    FROM (SELECT DISTINCT "line_id" FROM "hopper_line" WHERE "hopper_id" = ${hopperId}) l
    JOIN "packing_run" r ON r."id" = (
      SELECT q."id" FROM "packing_run" q
      WHERE q."line_id" = l."line_id" AND q."voided_by" IS NULL AND q."started_at" <= ${at}
      ORDER BY q."started_at" DESC, q."id" DESC LIMIT 1)
    JOIN "pack_format" f ON f."id" = r."format_id"
    LEFT JOIN "packing_run_close" c ON c."run_id" = r."id" AND c."voided_by" IS NULL
    WHERE (c."closed_at" IS NULL OR c."closed_at" > ${at})
      AND ${hopperId} = (SELECT h."hopper_id" FROM "hopper_line" h
        WHERE h."line_id" = r."line_id" AND h."valid_from" <= ${at} AND h."voided_by" IS NULL
        ORDER BY h."valid_from" DESC, h."id" DESC LIMIT 1)
    ORDER BY r."started_at", r."id"`;
}
