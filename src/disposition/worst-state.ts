import type { Verdict } from './standings.js';

/** How a thing stands, in one word. */
export type StateWord = 'waiting' | 'released' | 'on-hold' | 'rejected' | 'concession';

/** From the worst to the best; `docs/decisions/standing-of-a-bag.md` says why. */
const worstFirst: readonly StateWord[] = ['rejected', 'on-hold', 'waiting', 'concession', 'released'];

/** The word for a decision and open holds: a hold stops whatever was decided, but for what is rejected anyway. */
export function stateWord(verdict: Verdict, isOnHold: boolean): StateWord {
  return isOnHold && verdict !== 'rejected' ? 'on-hold' : verdict;
}

/**
 * The worst of several states: what a thing is that is made of all of them.
 *
 * @throws {RangeError} for an empty list, of which nothing can be said
 */
export function worstState(words: readonly StateWord[]): StateWord {
  const worst = worstFirst.find((word) => words.includes(word));
  if (worst === undefined) throw new RangeError('no states to take the worst of');
  return worst;
}
