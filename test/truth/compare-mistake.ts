import { checkLevel } from '../../src/core/hopper-flow/check-level.js';
import { orderForLevelCheck } from '../../src/core/hopper-flow/order-for-bounds.js';
import type { Suspect } from '../../src/core/hopper-flow/suspect.js';
import type { Mistaken } from './mistakes.js';

/** What the level check makes of one mistake. */
export interface MistakeFound {
  readonly isFound: boolean;
  /** The true kind is the only one that fits best; or one of those that are said to fit equally. */
  readonly isBest: boolean;
  readonly isTied: boolean;
  /** How many kinds are said to fit equally, this one among them; 1 where it stands alone. */
  readonly kindCount: number;
  /** A record is named for the true kind: the right one, or another. */
  readonly naming: 'right' | 'wrong' | 'none';
  /** The true kind's grams less the true ones. */
  readonly offGrams: number;
  /** From when it was made to when it shows. */
  readonly delayMinutes: number;
}

export function compareMistake({ period, kind, id, grams, at, elsewhere }: Mistaken): MistakeFound {
  const ordered = orderForLevelCheck(period);
  const { findings, suspects } = checkLevel(ordered, elsewhere);
  const [first] = findings;
  const nothing = { isFound: false, isBest: false, isTied: false, kindCount: 0, naming: 'none' } as const;
  if (first === undefined) return { ...nothing, offGrams: NaN, delayMinutes: NaN };
  const shownAt = period.events.find(({ event }) => event.id === first.eventId)?.latestAt ?? NaN;
  const best = bestOf(suspects);
  const right = best.find((suspect) => suspect.kind === kind);
  return {
    isFound: true,
    isBest: right !== undefined && best.length === 1,
    isTied: right !== undefined && best.length > 1,
    kindCount: best.length,
    naming: right?.id == null ? 'none' : right.id === id ? 'right' : 'wrong',
    offGrams: (right?.grams ?? NaN) - grams,
    delayMinutes: Math.max(0, shownAt - at) / 60,
  };
}

/** The first, and those that are tied with it. */
function bestOf(suspects: readonly Suspect[]): readonly Suspect[] {
  return suspects.filter(({ cures, isTied }, place) => cures && (isTied || place === 0));
}
