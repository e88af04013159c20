import { bagsOf } from '../drying/bulk-bags.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { hopperOf } from '../plant/plant-facts.js';
import type { HopperRow, NamedRow } from '../plant/plant-rows.js';
import type { ModelRow } from './flow-models.js';
import { contentOf, type HopperContent } from './hopper-content.js';
import { explainedLevel, levelOf, type HopperLevel } from './hopper-level.js';
import { currentPeriod, periodOf, periodsOfHopper, type PeriodRow } from './hopper-period-rows.js';
import { missingTipShown, type MissingTipShown } from './missing-tip.js';
import { suspectTips, type SuspectTip } from './named-suspects.js';
import { readHopperPeriod, type HopperPeriodFacts, type LevelFact } from './hopper-periods.js';
import { tipsOfPeriod, type TipRow } from './tips.js';

/** @throws {NotFound} `hopper`, also for one of another site */
export async function hopperOfSite(from: ReadFrom, siteId: string, hopperId: string): Promise<HopperRow> {
  const hopper = await hopperOf(from, hopperId);
  if (hopper.siteId !== siteId) throw new NotFound('hopper', hopperId);
  return hopper;
}

/** The hoppers of a site by code, each with its level now. */
export async function hoppersOf(
  from: ReadFrom,
  siteId: string,
): Promise<(NamedRow & { readonly level: HopperLevel })[]> {
  const rows = await from.sql<NamedRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name" FROM "hopper" WHERE "site_id" = ${siteId} ORDER BY "code"`;
  const hoppers: (NamedRow & { readonly level: HopperLevel })[] = [];
  for (const row of rows) hoppers.push({ ...row, level: await levelOf(from, row.id) });
  return hoppers;
}

/** Periods of a hopper by key (the id of the last one shown), the newest first. */
export async function periodPage(
  from: ReadFrom,
  hopperId: string,
  query: { readonly before?: string | null; readonly limit?: number | null },
): Promise<{ readonly items: readonly PeriodRow[]; readonly next: string | null }> {
  const limit = query.limit ?? 50;
  const beforeNumber = query.before == null ? null : (await periodOf(from, query.before)).number;
  const items = await periodsOfHopper(from, hopperId, { beforeNumber, limit });
  return { items, next: items.length < limit ? null : (items.at(-1)?.id ?? null) };
}

/** What left in a period, run by run. */
export interface RunExits {
  readonly runId: string;
  readonly number: string;
  readonly fromCount: number;
  readonly toCount: number;
  readonly grams: number;
}

/** A removal as lists show it. */
export interface RemovalExits {
  readonly removalId: string;
  readonly kind: string;
  readonly grams: number;
  readonly removedAt: string;
}

/** A hopper period as pages and the API show it. */
export interface PeriodView {
  readonly hopper: HopperRow;
  readonly period: PeriodRow;
  /** What *likely* is reckoned by in it; null: first in, first out. */
  readonly chosen: ModelRow | null;
  readonly level: HopperLevel;
  /** The tips that its suspects name. */
  readonly suspectTips: readonly SuspectTip[];
  /** By when a tip that nobody entered must have shown; null where the records can’t be true. */
  readonly missingTip: MissingTipShown | null;
  readonly tips: readonly TipRow[];
  readonly levels: readonly Pick<LevelFact, 'id' | 'how' | 'lowerGrams' | 'upperGrams' | 'seenAt'>[];
  readonly runs: readonly RunExits[];
  readonly removals: readonly RemovalExits[];
}

/** @throws {NotFound} `hopper-period`, also for one of another site */
export async function readPeriodView(from: ReadFrom, siteId: string, periodId: string): Promise<PeriodView> {
  const { siteId: ownSiteId } = await periodOf(from, periodId);
  if (ownSiteId !== siteId) throw new NotFound('hopper-period', periodId);
  const facts = await readHopperPeriod(from, periodId);
  const level = await explainedLevel(from, facts);
  return {
    hopper: facts.hopper,
    period: facts.period,
    chosen: facts.chosen,
    level,
    suspectTips: await suspectTips(from, level),
    missingTip: missingTipShown(facts, level),
    tips: await tipsOfPeriod(from, periodId),
    levels: facts.levels.map(({ id, how, lowerGrams, upperGrams, seenAt }) => {
      return { id, how, lowerGrams, upperGrams, seenAt };
    }),
    runs: runExits(facts),
    removals: facts.removals.map(({ removalId, kind, mass, likelyAt }) => {
      return { removalId, kind, grams: mass.grams, removedAt: likelyAt };
    }),
  };
}

function runExits(facts: HopperPeriodFacts): readonly RunExits[] {
  return [...facts.runs.values()].flatMap((run): RunExits[] => {
    const packs = facts.packs.filter(({ runId }) => runId === run.id);
    const [first, last] = [packs[0], packs.at(-1)];
    if (first === undefined || last === undefined) return [];
    const packCount = packs.reduce((sum, exit) => sum + exit.likelyToCount - exit.likelyFromCount, 0);
    const grams = Math.round((packCount * run.meanNet.meanMilligrams) / 1000);
    return [{ runId: run.id, number: run.number, fromCount: first.fromCount, toCount: last.toCount, grams }];
  });
}

/** A hopper with what may be inside it now, bags by their numbers. */
export interface HopperView extends HopperContent {
  readonly hopper: HopperRow;
  readonly bagNumbers: ReadonlyMap<string, string>;
  readonly period: PeriodView | null;
  readonly periods: readonly PeriodRow[];
}

/** @throws {NotFound} `hopper` */
export async function readHopperView(from: ReadFrom, siteId: string, hopperId: string): Promise<HopperView> {
  const hopper = await hopperOfSite(from, siteId, hopperId);
  const content = await contentOf(from, hopperId);
  const current = await currentPeriod(from, hopperId);
  const bags = await bagsOf(
    from,
    content.bags.map(({ bagId }) => bagId),
  );
  return {
    ...content,
    hopper,
    bagNumbers: new Map(bags.map(({ id, number }) => [id, number])),
    period: current === null ? null : await readPeriodView(from, siteId, current.id),
    periods: await periodsOfHopper(from, hopperId, { limit: 20 }),
  };
}
