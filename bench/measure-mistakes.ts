import { checkLevel } from '../src/core/hopper-flow/check-level.js';
import { orderForLevelCheck } from '../src/core/hopper-flow/order-for-bounds.js';
import { compareMistake } from '../test/truth/compare-mistake.js';
import { makeMistake, mistakeNames, type MistakeName } from '../test/truth/mistakes.js';
import type { Fault } from '../test/truth/recorded-period.js';
import { truthCase } from '../test/truth/truth-case.js';
import { spreadOf, type Spread } from './spread.js';

/** What the level check makes of one kind of mistake. Shares are of the mistakes made, but for the last two. */
export interface MistakeRow {
  readonly name: MistakeName;
  readonly madeCount: number;
  readonly foundShare: number;
  readonly aloneShare: number;
  readonly tiedShare: number;
  readonly otherShare: number;
  readonly rightNames: number;
  readonly wrongNames: number;
  /** Kilograms claimed, as a share of the true ones; of those that were told. */
  readonly claimedShare: Spread;
  readonly delayMinutes: Spread;
}

export interface MistakeTable {
  readonly faults: readonly Fault[];
  readonly rows: readonly MistakeRow[];
  readonly cleanShifts: number;
  readonly falseAlarms: number;
}

/** Makes each kind of mistake once in each plant, from seed 0 on, and checks the clean records too. */
export function measureMistakes(plantCount: number, faults: readonly Fault[]): MistakeTable {
  const cases = Array.from({ length: plantCount }, (_, seed) => {
    const { plant, recorded } = truthCase(seed, new Set(faults));
    return { plant, recorded };
  });
  const clean = cases.flatMap(({ recorded }) => recorded);
  return {
    faults,
    rows: mistakeNames.map((name) => {
      const made = cases.flatMap(({ plant, recorded }) => makeMistake(plant, recorded, name) ?? []);
      return rowOf(name, made);
    }),
    cleanShifts: clean.length,
    falseAlarms: clean.filter((period) => checkLevel(orderForLevelCheck(period)).findings.length > 0).length,
  };
}

function rowOf(name: MistakeName, made: readonly NonNullable<ReturnType<typeof makeMistake>>[]): MistakeRow {
  const compared = made.map((mistaken) => ({ ...compareMistake(mistaken), grams: mistaken.grams }));
  const found = compared.filter(({ isFound }) => isFound);
  const told = found.filter(({ isBest, isTied }) => isBest || isTied);
  const share = (count: number): number => count / made.length;
  return {
    name,
    madeCount: made.length,
    foundShare: share(found.length),
    aloneShare: share(found.filter(({ isBest }) => isBest).length),
    tiedShare: share(found.filter(({ isTied }) => isTied).length),
    otherShare: share(found.length - told.length),
    rightNames: found.filter(({ naming }) => naming === 'right').length,
    wrongNames: found.filter(({ naming }) => naming === 'wrong').length,
    claimedShare: spreadOf(told.map(({ offGrams, grams }) => (grams + offGrams) / grams)),
    delayMinutes: spreadOf(found.map(({ delayMinutes }) => delayMinutes)),
  };
}
