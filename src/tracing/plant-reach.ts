import { productionDayBounds, shiftsOfDay } from '../core/shift-calendar/locate-shift.js';
import { addDays, dayNumberOf } from '../core/shift-calendar/calendar-day.js';
import { bagsOf } from '../drying/bulk-bags.js';
import { reachOfTippedBags } from '../hopper/tipped-bags-reach.js';
import { shiftAt, shiftPatternAt, siteOf } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';

/** A longer time is not read at once. Our own value, no source. */
export const mostReachDays = 92;
const usualDays = 30;
const worstShown = 10;

/** How far the bags of a time reach, one by one, and their sum. */
export interface ReachSum {
  /** Of all bags: their sum; a pack that may hold several bags is counted for each. */
  readonly totalGrams: number;
  readonly meanGrams: number;
  readonly worstGrams: number;
}

/** How large a recall of one bag would be, over the bags tipped on some production days. */
export interface PlantReach {
  readonly fromOn: string;
  readonly untilOn: string;
  readonly bagCount: number;
  readonly asIs: ReachSum;
  /** Had every hopper been run empty and proven so at each change of shift besides. */
  readonly withEmpties: ReachSum & { readonly emptyCount: number };
  /** By how much the mean would have been less. */
  readonly shrinkPercent: number;
  readonly worst: readonly { readonly bagId: string; readonly number: string; readonly grams: number }[];
}

/**
 * From the plant's own records, by the bounds alone.
 *
 * @param untilOn the last production day, included
 * @throws {Refusal} `bag-reach-days-turned-round`, `bag-reach-too-long`
 */
export async function readPlantReach(
  from: ReadFrom,
  siteId: string,
  { fromOn, untilOn }: { readonly fromOn: string; readonly untilOn: string },
): Promise<PlantReach> {
  if (untilOn < fromOn) throw new Refusal('bag-reach-days-turned-round', { from: fromOn, until: untilOn });
  if (dayNumberOf(untilOn) - dayNumberOf(fromOn) >= mostReachDays)
    throw new Refusal('bag-reach-too-long', { days: mostReachDays });
  const { timeZone } = await siteOf(from, siteId);
  const pattern = await shiftPatternAt(from, siteId, `${untilOn}T12:00:00.000Z`);
  const fromAt = productionDayBounds(pattern, timeZone, fromOn).startsAt;
  const untilAt = productionDayBounds(pattern, timeZone, untilOn).endsAt;
  const changesIn = (startedAt: string, endedAt: string): string[] => {
    const changes: string[] = [];
    const [first, last] = [addDays(startedAt.slice(0, 10), -1), addDays(endedAt.slice(0, 10), 1)];
    for (let day = first; day <= last; day = addDays(day, 1)) {
      for (const { startsAt } of shiftsOfDay(pattern, timeZone, day)) {
        if (startsAt > startedAt && startsAt < endedAt) changes.push(startsAt);
      }
    }
    return changes;
  };
  const reach = await reachOfTippedBags(from, { siteId, fromAt, untilAt }, changesIn);
  const asIs = sumOf(reach.gramsByBag);
  const withEmpties = { ...sumOf(reach.gramsByBagWithEmpties), emptyCount: reach.emptyCount };
  const shrink = asIs.totalGrams === 0 ? 0 : 1 - withEmpties.totalGrams / asIs.totalGrams;
  return {
    ...{ fromOn, untilOn, bagCount: reach.gramsByBag.size, asIs, withEmpties },
    shrinkPercent: Math.round(shrink * 1000) / 10,
    worst: await worstOf(from, reach.gramsByBag),
  };
}

/** The days that are asked for; up to today, and thirty of them, unless said otherwise. */
export async function daysOf(
  from: ReadFrom,
  siteId: string,
  asked: { readonly from?: string | null; readonly until?: string | null },
  now: Instant,
): Promise<{ readonly fromOn: string; readonly untilOn: string }> {
  const untilOn = asked.until ?? (await shiftAt(from, siteId, now)).productionOn;
  return { fromOn: asked.from ?? addDays(untilOn, 1 - usualDays), untilOn };
}

function sumOf(gramsByBag: ReadonlyMap<string, number>): ReachSum {
  let [totalGrams, worstGrams] = [0, 0];
  for (const grams of gramsByBag.values()) {
    totalGrams += grams;
    worstGrams = Math.max(worstGrams, grams);
  }
  return { totalGrams, meanGrams: Math.round(totalGrams / Math.max(1, gramsByBag.size)), worstGrams };
}

async function worstOf(from: ReadFrom, gramsByBag: ReadonlyMap<string, number>): Promise<PlantReach['worst']> {
  const worst = [...gramsByBag].sort(([, one], [, other]) => other - one).slice(0, worstShown);
  const bags = new Map(
    (
      await bagsOf(
        from,
        worst.map(([bagId]) => bagId),
      )
    ).map(({ id, number }) => [id, number]),
  );
  return worst.map(([bagId, grams]) => ({ bagId, number: bags.get(bagId) ?? '', grams }));
}
