import { setImmediate } from 'node:timers/promises';
import { orderForBounds } from '../core/hopper-flow/order-for-bounds.js';
import { possibleMass } from '../core/hopper-flow/possible-mass.js';
import { prepareHopperPeriod } from '../core/hopper-flow/prepare-period.js';
import type { Content } from '../core/hopper-flow/group-content.js';
import type { TimedHopperPeriod } from '../core/hopper-flow/timed-event.js';
import { withExtraEmpties } from '../core/hopper-flow/with-extra-empties.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { residueId } from './addition-facts.js';
import type { PeriodContents } from './bag-contents.js';
import { reachOfBags } from './group-reach.js';
import { HopperBook } from './hopper-book.js';
import type { PeriodRow } from './hopper-period-rows.js';
import { lastInstantOf, type HopperPeriodFacts } from './hopper-periods.js';
import { timedPeriodOf, wholePiece } from './period-events.js';
import { laterOf } from './record-times.js';

/** How far bags reach that were tipped within a time: grams of packs that may hold some of each. */
export interface TippedReach {
  readonly gramsByBag: ReadonlyMap<string, number>;
  /** The same had the hopper been run empty at some more times. */
  readonly gramsByBagWithEmpties: ReadonlyMap<string, number>;
  /** How many empties those were. */
  readonly emptyCount: number;
}

/**
 * By the bounds alone, through residues and rework. Each hopper period is read once for all bags.
 * @param emptiesIn when, within a period that lasted from one instant to another, it is tried to run the hopper empty
 */
export async function reachOfTippedBags(
  from: ReadFrom,
  tipped: { readonly siteId: string; readonly fromAt: Instant; readonly untilAt: Instant },
  emptiesIn: (startedAt: Instant, endedAt: Instant) => readonly Instant[],
): Promise<TippedReach> {
  const tips = await tippedBetween(from, tipped);
  const wanted = new Set(tips.map(({ bagId }) => bagId));
  const book = new HopperBook(from);
  const reach = await reachOfBags(from, [], [...new Set(tips.map(({ periodId }) => periodId))]);
  const periods: HopperPeriodFacts[] = [];
  for (const periodId of reach.periodIds) periods.push(await book.facts(periodId));
  // What is carried on as a residue is known once the period before was looked at.
  periods.sort((one, other) => (one.period.startedAt < other.period.startedAt ? -1 : 1));
  const [asIs, withEmpties] = [new Reached(wanted), new Reached(wanted)];
  let emptyCount = 0;
  for (const facts of periods) {
    const contents = await book.contents(facts.period.id);
    const timed = timedPeriodOf(facts);
    const isPack = packsOf(facts);
    asIs.add(facts.period, contents, [timed], isPack);
    const cut = withExtraEmpties(timed, emptiesIn(firstPourOf(facts), lastInstantOf(facts)));
    withEmpties.add(facts.period, contents, cut.parts, isPack);
    emptyCount += cut.emptyCount;
    await setImmediate();
  }
  return { gramsByBag: asIs.gramsByBag, gramsByBagWithEmpties: withEmpties.gramsByBag, emptyCount };
}

/** Adds up what bags reach, period by period, in the order of time. */
class Reached {
  readonly gramsByBag: Map<string, number>;
  /** By period: the bags of which something may have been inside at its end. */
  private readonly carried = new Map<string, ReadonlySet<string>>();

  constructor(wanted: ReadonlySet<string>) {
    this.gramsByBag = new Map([...wanted].map((bagId) => [bagId, 0]));
  }

  add(
    period: PeriodRow,
    contents: PeriodContents,
    parts: readonly TimedHopperPeriod<Instant>[],
    isPack: (exitId: string) => boolean,
  ): void {
    for (const part of parts) {
      const prepared = prepareHopperPeriod(orderForBounds(part));
      const groups = this.groupsIn(part, period, contents);
      for (const [bagId, group] of groups) {
        this.gramsByBag.set(bagId, (this.gramsByBag.get(bagId) ?? 0) + possibleMass(prepared, group, isPack));
      }
      this.carried.set(period.id, new Set(groups.keys()));
    }
  }

  private groupsIn(
    { events }: TimedHopperPeriod<Instant>,
    { id, previousPeriodId }: PeriodRow,
    contents: PeriodContents,
  ): ReadonlyMap<string, Map<string, Content>> {
    const groups = new Map<string, Map<string, Content>>();
    for (const { event } of events) {
      const content = event.kind === 'addition' ? contents.get(event.id) : undefined;
      if (content === undefined) continue;
      const before = event.id === residueId(id) ? this.carried.get(previousPeriodId ?? '') : undefined;
      for (const [bagId, part] of content) {
        if (!this.gramsByBag.has(bagId) || before?.has(bagId) === false) continue;
        groups.set(bagId, (groups.get(bagId) ?? new Map<string, Content>()).set(event.id, part.content));
      }
    }
    return groups;
  }
}

/** A hopper that was never proven empty has a first period as old as the plant. */
function firstPourOf({ period, additions }: HopperPeriodFacts): Instant {
  return laterOf(period.startedAt, additions[0]?.earliestAt ?? period.startedAt);
}

/** Rejects, samples and what was left inside are no packs: nobody recalls them. */
function packsOf({ packs }: HopperPeriodFacts): (exitId: string) => boolean {
  const ids = new Set(packs.map((pack) => wholePiece(pack).id));
  return (exitId) => ids.has(exitId);
}

async function tippedBetween(
  from: ReadFrom,
  { siteId, fromAt, untilAt }: { readonly siteId: string; readonly fromAt: Instant; readonly untilAt: Instant },
): Promise<readonly { readonly bagId: string; readonly periodId: string }[]> {
  return from.sql<{ bagId: string; periodId: string }>`
    SELECT t."bag_id" AS "bagId", t."period_id" AS "periodId" FROM "tip" t
    WHERE t."site_id" = ${siteId} AND t."opened_at" >= ${fromAt} AND t."opened_at" < ${untilAt}
      AND t."voided_by" IS NULL AND t."bag_id" IS NOT NULL
    UNION
    SELECT c."bag_id", t."period_id" FROM "tip_candidate" c JOIN "tip" t ON t."id" = c."tip_id"
    WHERE t."site_id" = ${siteId} AND t."opened_at" >= ${fromAt} AND t."opened_at" < ${untilAt}
      AND t."voided_by" IS NULL AND c."voided_by" IS NULL
    ORDER BY 2, 1`;
}
