/** Where what was produced has gone, in one unit throughout: packs, grams or milligrams. Whole, 0 or more. */
export interface RecallAmounts {
  /** By the counts of the line (times the mean net, for grams), never by adding up the rest. */
  readonly produced: number;
  readonly inStore: number;
  /** Put ready at the dock, not on a vehicle yet. */
  readonly onDock: number;
  /** On a vehicle that has not left. */
  readonly onVehicle: number;
  /** All that left, with what came back since and waits or was destroyed; what was put on sale again is in store. */
  readonly dispatched: number;
  readonly rejects: number;
  readonly samples: number;
  readonly retained: number;
  readonly scrapped: number;
}

export type RecallVerdict = 'adds-up' | 'some-unaccounted' | 'more-found-than-produced';

export interface RecallBalance extends RecallAmounts {
  /** In store, at the dock and on a vehicle: what can be blocked. */
  readonly held: number;
  /** Rejects, samples, retained and scrapped. */
  readonly usedUp: number;
  /** Held, dispatched and used up. */
  readonly found: number;
  /** Produced less found. The only field made of a difference; below zero more was found than produced. */
  readonly unaccounted: number;
  /** Found of produced, to two decimals, not clipped at 100; `null` where nothing was produced. */
  readonly accountedPercent: number | null;
  readonly verdict: RecallVerdict;
}

/**
 * Produced = in store + at the dock + on a vehicle + dispatched + used up + unaccounted.
 *
 * Every part is counted by itself; the difference is named *unaccounted* and fills no other field. Where more was found than
 * produced the records contradict each other: the difference is negative and the share above 100, and both are said.
 *
 * @throws RangeError when an amount is not whole or negative
 * @example
 * recallBalance({ produced: 100, inStore: 60, onDock: 0, onVehicle: 0, dispatched: 30, rejects: 2, samples: 1, retained: 1,
 * scrapped: 0 }) // found 94, unaccounted 6, 94 % accounted for
 */
export function recallBalance(amounts: RecallAmounts): RecallBalance {
  refuseNotWhole(amounts);
  const { produced, inStore, onDock, onVehicle, dispatched, rejects, samples, retained, scrapped } = amounts;
  const held = inStore + onDock + onVehicle;
  const usedUp = rejects + samples + retained + scrapped;
  const found = held + dispatched + usedUp;
  const unaccounted = produced - found;
  return {
    ...amounts,
    held,
    usedUp,
    found,
    unaccounted,
    accountedPercent: percentOf(found, produced),
    verdict: unaccounted === 0 ? 'adds-up' : unaccounted > 0 ? 'some-unaccounted' : 'more-found-than-produced',
  };
}

/** What customers said became of what they had got, in the unit of `dispatched`. Whole, 0 or more. */
export interface RecallAnswers {
  readonly dispatched: number;
  readonly returned: number;
  readonly destroyedAtCustomer: number;
  readonly confirmedSold: number;
}

export interface RecallRates {
  /** Returned and destroyed at the customer, of dispatched: what can do no harm any more. */
  readonly recoveryPercent: number | null;
  /** Those and what the customer says was sold, of dispatched: what nobody needs to ask about any more. */
  readonly closedOutPercent: number | null;
  /** Dispatched less all answers; below zero customers answered for more than was sent to them. */
  readonly openAtCustomers: number;
  readonly isContradiction: boolean;
}

/**
 * How far a recall has come at the customers. Recovery and close-out answer different questions and neither is the share
 * accounted for; the three are never added or averaged.
 *
 * @returns shares to two decimals, not clipped at 100; `null` where nothing was dispatched
 * @throws RangeError when an amount is not whole or negative
 * @example
 * recallRates({ dispatched: 200, returned: 100, destroyedAtCustomer: 20, confirmedSold: 60 }) // 60 % recovered, 90 % closed out
 */
export function recallRates(answers: RecallAnswers): RecallRates {
  refuseNotWhole(answers);
  const { dispatched, returned, destroyedAtCustomer, confirmedSold } = answers;
  const recovered = returned + destroyedAtCustomer;
  const openAtCustomers = dispatched - recovered - confirmedSold;
  return {
    recoveryPercent: percentOf(recovered, dispatched),
    closedOutPercent: percentOf(recovered + confirmedSold, dispatched),
    openAtCustomers,
    isContradiction: openAtCustomers < 0,
  };
}

/**
 * How many times more is recalled than is affected: 1 is exact, 20 recalls twenty kilograms for each one that may be bad.
 *
 * @param recalledGrams what the recall covers, whole, 0 or more
 * @param affectedGrams what is affected, as far as known, whole, 0 or more
 * @returns to two decimals; `null` where nothing is affected, or nobody knows
 * @throws RangeError when an amount is not whole or negative
 * @example
 * overRecallFactor(19_800_000, 996_500) // 19.87
 */
export function overRecallFactor(recalledGrams: number, affectedGrams: number | null): number | null {
  refuseNotWhole({ recalledGrams, affectedGrams: affectedGrams ?? 0 });
  if (affectedGrams === null || affectedGrams === 0) return null;
  return Math.round((recalledGrams / affectedGrams) * 100) / 100;
}

function percentOf(part: number, whole: number): number | null {
  return whole === 0 ? null : Math.round((part / whole) * 10_000) / 100;
}

function refuseNotWhole(amounts: object): void {
  for (const [name, amount] of Object.entries(amounts) as readonly (readonly [string, number])[]) {
    if (!Number.isSafeInteger(amount) || amount < 0) {
      throw new RangeError(`${name} must be whole, 0 or more, not ${amount}`);
    }
  }
}
