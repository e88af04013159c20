import { openHoldsOfSite } from '../disposition/holds.js';
import { openChangeoverOf } from '../hopper/changeovers.js';
import { likelyLayersOf } from '../hopper/likely-layers.js';
import type { HopperLevel } from '../hopper/hopper-level.js';
import { dueChecks } from '../line-checks/due-checks.js';
import { openPointsOf } from '../open-points/open-points.js';
import { looseCounts, lotRanges, openRunOfLine, stopsOf } from '../packing/packing-runs.js';
import type { RunRow } from '../packing/packing-run-rows.js';
import { palletsOfRuns } from '../pallets/label-not-back.js';
import { hopperOf } from '../plant/plant-facts.js';
import type { NamedRow } from '../plant/plant-rows.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { SentenceFacts } from '../platform/refusal.js';
import { packsOnNoPallet } from './packs-on-no-pallet.js';
import { shiftBalanceOf, type ShiftBalance } from './shift-balance.js';

/** The six points of a handover in figures, as they stand, and frozen when it is signed. Whole numbers and text only. */
export interface HandoverPoints {
  readonly hopper: {
    readonly code: string;
    readonly lowerGrams: number;
    readonly grams: number;
    readonly upperGrams: number;
    readonly layers: readonly { readonly name: string; readonly grams: number }[];
    readonly olderCount: number;
  };
  readonly running: {
    readonly run: string;
    readonly format: string;
    readonly lot: string | null;
    readonly packCount: number;
  } | null;
  readonly notFinished: {
    readonly hangingBags: readonly string[];
    /** Packed and on no pallet by the counts. */
    readonly openPacks: number | null;
    /** Of these, counted loose on belts and tables in this shift; null: nobody counted. */
    readonly loosePacks: number | null;
    readonly labelsNotBack: readonly string[];
    readonly stoppedBecause: string | null;
    /** The rung of the changeover that comes next. */
    readonly changeoverNext: string | null;
  };
  readonly notAllowed: readonly { readonly hold: string; readonly about: string; readonly reason: string }[];
  readonly balance: {
    readonly openingGrams: number;
    readonly tippedGrams: number;
    readonly packedGrams: number;
    readonly rejectGrams: number;
    readonly sampleGrams: number;
    readonly sweepingGrams: number;
    readonly insideGrams: number;
    readonly doubtGrams: number;
  };
  /** Line checks by plan that are due, or will be. */
  readonly checks: readonly { readonly kind: string; readonly station: string; readonly dueAt: Instant }[];
  /** Open points of the line leads: what is due or doubtful. */
  readonly due: readonly { readonly cause: string; readonly facts: SentenceFacts }[];
}

export interface HandoverAsked {
  readonly siteId: string;
  readonly line: NamedRow;
  readonly hopperId: string;
  readonly level: HopperLevel;
  readonly fromAt: Instant;
  readonly now: Instant;
}

/** More would not be read at a handover; the open points have their own page. */
const mostListed = 12;

/** What the incoming lead needs to know of a line now. */
export async function handoverPointsOf(from: ReadFrom, asked: HandoverAsked): Promise<HandoverPoints> {
  const { siteId, line, hopperId, level, fromAt, now } = asked;
  const untilAt = shifted(now, 1);
  const balance = await shiftBalanceOf(from, { siteId, hopperId, fromAt, untilAt, level });
  const run = await openRunOfLine(from, line.id);
  const { grams, lowerGrams, upperGrams } = level;
  const { layers, olderCount } = await likelyLayersOf(from, level.periodId ?? '', grams);
  const { stretches } = balance;
  const ownRuns = [...new Set([...stretches.map(({ runId }) => runId), ...(run === null ? [] : [run.id])])];
  const pallets = await palletsOfRuns(from, ownRuns, { fromAt, untilAt });
  return {
    hopper: {
      ...{ code: (await hopperOf(from, hopperId)).code, lowerGrams, grams, upperGrams, olderCount },
      layers: layers.map(({ name, grams: inside }) => ({ name, grams: inside })),
    },
    running: run === null ? null : await runningOf(from, run),
    notFinished: {
      hangingBags: balance.tips.filter(({ isHanging }) => isHanging).map(({ name }) => name),
      openPacks: run === null ? null : await packsOnNoPallet(from, run),
      loosePacks: run === null ? null : await loosePacksOf(from, run.id, fromAt),
      labelsNotBack: pallets
        .filter(({ hasLabel, labelCheckedAt }) => hasLabel && labelCheckedAt === null)
        .map(({ sscc }) => sscc),
      stoppedBecause: run === null ? null : await stopReasonOf(from, run.id),
      changeoverNext: (await openChangeoverOf(from, line.id))?.next ?? null,
    },
    notAllowed: (await openHoldsOfSite(from, siteId, mostListed)).map(({ number, scopeKind, reason }) => {
      return { hold: number, about: scopeKind, reason };
    }),
    balance: sumsOf(balance),
    checks: await checksOf(from, line.id, now),
    due: await dueOf(from, siteId, line),
  };
}

function sumsOf(balance: ShiftBalance): HandoverPoints['balance'] {
  const { openingGrams, tippedGrams, packedGrams, rejectGrams, sampleGrams, sweepingGrams } = balance;
  const { insideGrams, doubtGrams } = balance;
  const outs = { packedGrams, rejectGrams, sampleGrams, sweepingGrams };
  return { openingGrams, tippedGrams, ...outs, insideGrams, doubtGrams };
}

async function runningOf(from: ReadFrom, run: RunRow): Promise<HandoverPoints['running']> {
  const lot = (await lotRanges(from, run.id)).at(-1)?.code ?? null;
  return { run: run.number, format: run.formatName, lot, packCount: run.packCount };
}

async function loosePacksOf(from: ReadFrom, runId: string, fromAt: Instant): Promise<number | null> {
  return (await looseCounts(from, [runId])).findLast(({ countedAt }) => countedAt >= fromAt)?.packCount ?? null;
}

async function stopReasonOf(from: ReadFrom, runId: string): Promise<string | null> {
  return (await stopsOf(from, [runId])).find(({ startedAgainAt }) => startedAgainAt === null)?.reason ?? null;
}

async function checksOf(from: ReadFrom, lineId: string, now: Instant): Promise<HandoverPoints['checks']> {
  return (await dueChecks(from, lineId, now)).flatMap(({ plan: { kind, station }, dueAt }) => {
    return dueAt === null ? [] : [{ kind, station, dueAt }];
  });
}

async function dueOf(from: ReadFrom, siteId: string, line: NamedRow): Promise<HandoverPoints['due']> {
  const points = await openPointsOf(from, siteId, { state: 'open', role: 'line-lead', limit: 50 });
  return points
    .filter(({ facts }) => facts['line'] === undefined || facts['line'] === line.code)
    .slice(0, mostListed)
    .map(({ cause, facts }) => ({ cause, facts }));
}
