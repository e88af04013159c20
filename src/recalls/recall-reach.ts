import { bagOf, bagsFilledBetween, type BagRow } from '../drying/bulk-bags.js';
import { rangesOfBag } from '../hopper/hopper-links.js';
import { lotOf, runOf } from '../packing/packing-runs.js';
import { runsOfLine } from '../packing/packs-in-time.js';
import { united, type RunRange } from '../packing/run-ranges.js';
import { dryerOf, lineOf } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { countsByRun } from '../tracing/packed-parts.js';
import { rangesOfSubject } from '../tracing/subject-ranges.js';
import { certainRange, possibleRange, type TimeWindow } from '../packing/ranges-in-time.js';
import type { RecallScopeRow } from './recalls.js';
import type { RecallSureness } from './recall-words.js';

/** What a recall covers: packs by their runs' counts, and bags with what is still in them. */
export interface RecallReach {
  readonly ranges: readonly RunRange[];
  readonly bags: readonly BagRow[];
}

/** Of one thing a recall is of. */
interface Reached {
  readonly ranges: readonly RunRange[];
  readonly bags: readonly BagRow[];
}

/** All packs and bags that a recall of these things covers; each counted once, however many of them reach it. */
export async function reachOfScopes(
  from: ReadFrom,
  siteId: string,
  scopes: readonly RecallScopeRow[],
  sureness: RecallSureness,
): Promise<RecallReach> {
  const reached: Reached[] = [];
  for (const scope of scopes) reached.push(await reachOfScope(from, siteId, scope, sureness));
  const bags = new Map(reached.flatMap((one) => one.bags).map((bag) => [bag.id, bag]));
  return { ranges: united(reached.flatMap((one) => one.ranges)), bags: [...bags.values()] };
}

async function reachOfScope(
  from: ReadFrom,
  siteId: string,
  scope: RecallScopeRow,
  sureness: RecallSureness,
): Promise<Reached> {
  const { scopeKind, scopeId: id } = scope;
  const window = windowOf(scope);
  switch (scopeKind) {
    case 'bulk-bag':
      return ofBags(from, [await bagOf(from, id)], sureness);
    case 'dryer-shift':
      return window === null
        ? nothing
        : ofBags(from, await bagsFilledBetween(from, id, window.fromAt, window.untilAt), sureness);
    case 'lot':
      return ofPacks(from, siteId, { kind: 'lot', id }, null, sureness);
    case 'packing-run':
      return ofPacks(from, siteId, { kind: 'packing-run', id }, window, sureness);
    case 'packing-shift':
      return window === null ? nothing : ofLine(from, siteId, { lineId: id, ...window }, sureness);
  }
}

const nothing: Reached = { ranges: [], bags: [] };

function windowOf({ fromAt, untilAt }: RecallScopeRow): TimeWindow | null {
  return fromAt === null || untilAt === null ? null : { fromAt, untilAt };
}

async function ofBags(from: ReadFrom, bags: readonly BagRow[], sureness: RecallSureness): Promise<Reached> {
  const ranges: RunRange[] = [];
  for (const bag of bags) {
    const links = await rangesOfBag(from, bag.id);
    ranges.push(...links.filter(({ word }) => sureness === 'possible' || word !== 'possible'));
  }
  return { ranges, bags };
}

async function ofPacks(
  from: ReadFrom,
  siteId: string,
  { kind, id }: { readonly kind: 'lot' | 'packing-run'; readonly id: string },
  window: TimeWindow | null,
  sureness: RecallSureness,
): Promise<Reached> {
  const subject = { kind, id, name: '', localTime: null, printedAt: null, codedBetween: null };
  const { possible } = await rangesOfSubject(from, siteId, subject);
  if (window === null) return { ranges: possible, bags: [] };
  const counts = await countsByRun(from, possible);
  const within = sureness === 'possible' ? possibleRange : certainRange;
  return { ranges: possible.flatMap((range) => within(range, counts.get(range.runId) ?? [], window) ?? []), bags: [] };
}

async function ofLine(
  from: ReadFrom,
  siteId: string,
  during: TimeWindow & { readonly lineId: string },
  sureness: RecallSureness,
): Promise<Reached> {
  const ranges: RunRange[] = [];
  for (const { id } of await runsOfLine(from, during)) {
    ranges.push(...(await ofPacks(from, siteId, { kind: 'packing-run', id }, during, sureness)).ranges);
  }
  return { ranges, bags: [] };
}

/**
 * A thing that a recall is of, as people call it, and the site it belongs to.
 *
 * @throws {NotFound}
 */
export async function nameOfScope(
  from: ReadFrom,
  { scopeKind, scopeId }: Pick<RecallScopeRow, 'scopeKind' | 'scopeId'>,
): Promise<{ readonly name: string; readonly siteId: string }> {
  const named = <Row extends { readonly siteId: string }>(row: Row, name: string) => ({ name, siteId: row.siteId });
  switch (scopeKind) {
    case 'bulk-bag': {
      const bag = await bagOf(from, scopeId);
      return named(bag, bag.number);
    }
    case 'lot': {
      const lot = await lotOf(from, scopeId);
      return named(lot, lot.code);
    }
    case 'packing-run': {
      const run = await runOf(from, scopeId);
      return named(run, run.number);
    }
    case 'dryer-shift': {
      const dryer = await dryerOf(from, scopeId);
      return named(dryer, dryer.code);
    }
    case 'packing-shift': {
      const line = await lineOf(from, scopeId);
      return named(line, line.code);
    }
  }
}
