import type { Ground } from '../disposition/narrowings.js';
import type { BagStanding, HoldRow } from '../disposition/standings.js';
import { strongerWord, type SourceLink } from '../hopper/hopper-links.js';
import type { FilmRange, RunCounts } from '../packing/packing-run-rows.js';
import { shared, without, type RunRange } from '../packing/run-ranges.js';
import { toGround, type PeriodReach } from './held-periods.js';
import { packsHeld, type TimedPacks } from './timed-packs.js';

/** Some packs that a hold may reach: those of a pallet, of a lot, of some minutes. */
export interface HoldTarget {
  /** The pallet and those it was made from; none for packs that are not asked about as a pallet. */
  readonly palletIds: readonly string[];
  readonly possible: readonly RunRange[];
  readonly contents: readonly (RunRange & { readonly lotId: string })[];
  readonly links: readonly SourceLink[];
  /** The hopper periods on hold whose sugar may be in them. */
  readonly heldPeriods: ReadonlyMap<string, PeriodReach>;
}

/** What is known of film, times and bags, for any target. */
export interface AroundTarget {
  readonly film: readonly FilmRange[];
  readonly timed: TimedPacks;
  readonly standings: ReadonlyMap<string, BagStanding>;
}

/** By what a hold reaches some packs: the packs that it covers, or the bags that it holds; nothing: it does not. */
export function groundOf(hold: HoldRow, target: HoldTarget, { film, timed, standings }: AroundTarget): Ground {
  const { scopeKind, scopeId } = hold;
  const within = (ranges: readonly RunCounts[]): Ground => ({ packs: shared(target.possible, ranges), bags: [] });
  switch (scopeKind) {
    case 'pallet':
      return target.palletIds.includes(scopeId) ? { packs: target.possible, bags: [] } : nothing;
    case 'lot':
      return { packs: packsOfLot(target, scopeId), bags: [] };
    case 'packing-run':
    case 'packing-shift':
      return within(packsHeld(hold, timed));
    case 'film-lot':
      return within(film.filter(({ filmLotId }) => filmLotId === scopeId));
    case 'hopper-period': {
      const reach = target.heldPeriods.get(scopeId);
      if (reach === undefined) return nothing;
      // Sugar of no known bag is held with the packs that it may be in.
      return reach.bags.length > 0 ? { packs: [], bags: reach.bags } : { packs: target.possible, bags: [] };
    }
    case 'bulk-bag':
    case 'dryer-run':
    case 'dryer-shift': {
      const isHeld = (bagId: string): boolean => standings.get(bagId)?.holds.some(({ id }) => id === hold.id) === true;
      return { packs: [], bags: target.links.filter(({ bagId }) => isHeld(bagId)).map(toGround) };
    }
  }
}

/** Whether a hold follows sugar, so that which packs it reaches is a question to the hopper. */
export function followsSugar({ scopeKind }: Pick<HoldRow, 'scopeKind'>): boolean {
  return ['bulk-bag', 'dryer-run', 'dryer-shift', 'hopper-period'].includes(scopeKind);
}

export function isNothing({ packs, bags }: Ground): boolean {
  return packs.length === 0 && bags.length === 0;
}

/**
 * Whether all that a hold reaches something by now was there when it was assessed: no other packs, no other bag, no bag
 * by another way, nor surer or with more of it than then. A pack's mean net settles while a run is weighed, so that a
 * hundredth more of a bag is no more of it (our own value, no source).
 */
export function isWithin(now: Ground, assessed: Ground): boolean {
  if (without(now.packs, assessed.packs).length > 0) return false;
  return now.bags.every((bag) =>
    assessed.bags.some(
      ({ bagId, periodId, mostGrams, word }) =>
        bagId === bag.bagId &&
        periodId === bag.periodId &&
        bag.mostGrams <= Math.ceil(mostGrams * 1.01) &&
        strongerWord(word, bag.word) === word,
    ),
  );
}

/** The packs of a lot; after a split those of which nobody knows whether they are there count too. */
function packsOfLot({ possible, contents }: HoldTarget, lotId: string): readonly RunRange[] {
  const own = contents.filter((row) => row.lotId === lotId);
  return own.length === 0 ? [] : shared([...own, ...without(possible, contents)], possible);
}

const nothing: Ground = { packs: [], bags: [] };
