import { exactSums, standardDeviationMilligrams } from '../../core/average-quantity/pack-sums.js';
import type { WeightSums } from '../../core/weight-blocks/weight-summary.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import type { Instant } from '../../platform/clock.js';

/** Of fewer lots nobody can say how lots drift. Our own value, no source. */
export const leastLots = 5;

/** A lot with fewer weighed packs says too little of its mean and spread. Our own value, no source. */
export const leastPacksOfLot = 50;

/** Why a lot is left out of the advice: too few of its packs were weighed, or fewer than half of those counted. */
export type LeftOut = 'not-weighed' | 'few-packs' | 'mostly-unweighed';

/** What a closed run's accepted packs say of how the line fills. */
export interface FillLot {
  readonly runId: string;
  readonly number: string;
  readonly startedAt: Instant;
  readonly countedPackCount: number;
  readonly weighedPackCount: number;
  /** Null where nothing was weighed. */
  readonly meanMilligrams: number | null;
  /** Null of fewer than two packs. */
  readonly standardDeviationMilligrams: number | null;
  /** What the filler was set to from its start to its close; null: not recorded, or changed meanwhile. */
  readonly setpointMilligrams: number | null;
  /** Net less nominal of all weighed packs, short ones taken off. */
  readonly giveawayMilligrams: number;
  /** Null: the advice rests on it. */
  readonly leftOut: LeftOut | null;
}

/** A lot that the advice rests on. */
export interface UsedLot {
  readonly packCount: number;
  readonly meanMilligrams: number;
  readonly standardDeviationMilligrams: number;
  /** Null: not known. */
  readonly setpointMilligrams: number | null;
}

export function fillLotOf(run: RunRow, sums: WeightSums, setpointMilligrams: number | null): FillLot {
  const { packCount, errorSumMilligrams } = sums;
  const nominalMilligrams = run.nominalGrams * 1000;
  return {
    ...{ runId: run.id, number: run.number, startedAt: run.startedAt },
    ...{ countedPackCount: run.packCount, weighedPackCount: packCount },
    meanMilligrams: packCount === 0 ? null : nominalMilligrams + errorSumMilligrams / packCount,
    standardDeviationMilligrams: standardDeviationMilligrams(exactSums(sums)),
    setpointMilligrams,
    giveawayMilligrams: errorSumMilligrams,
    leftOut: leftOutOf(packCount, run.packCount),
  };
}

function leftOutOf(weighedPackCount: number, countedPackCount: number): LeftOut | null {
  if (weighedPackCount === 0) return 'not-weighed';
  if (weighedPackCount < leastPacksOfLot) return 'few-packs';
  return weighedPackCount * 2 < countedPackCount ? 'mostly-unweighed' : null;
}

/** The lots that the advice rests on. */
export function usedLots(lots: readonly FillLot[]): readonly UsedLot[] {
  return lots.flatMap((lot) => {
    const { weighedPackCount: packCount, meanMilligrams, standardDeviationMilligrams, setpointMilligrams } = lot;
    if (lot.leftOut !== null || meanMilligrams === null || standardDeviationMilligrams === null) return [];
    return [{ packCount, meanMilligrams, standardDeviationMilligrams, setpointMilligrams }];
  });
}
