import { assertRange, type Exit } from './hopper-event.js';
import type { Instant, TimedEvent } from './timed-event.js';

/**
 * Cuts exits of a sorted period into pieces, so that a target may have a part of one: the pieces stand in the place of
 * their exit, in the order given, and each has its interval. Nothing else is checked or sorted again.
 * @param sorted by `sortForBounds` or `sortLikely`; stays as it is
 * @param piecesById of the exits that are cut, by their ids; the pieces' own ids must be new
 * @throws RangeError when a piece's mass is not whole grams in order
 * @example cutExits(sortForBounds({ capacityGrams: null, events: [] }), new Map()).events // []
 */
export function cutExits<At extends Instant, Sorted extends { readonly events: readonly TimedEvent<At>[] }>(
  sorted: Sorted,
  piecesById: ReadonlyMap<string, readonly Exit[]>,
): Sorted {
  if (piecesById.size === 0) return sorted;
  const events: TimedEvent<At>[] = [];
  for (const entry of sorted.events) {
    const pieces = entry.event.kind === 'exit' ? piecesById.get(entry.event.id) : undefined;
    if (pieces === undefined) events.push(entry);
    else for (const piece of pieces) events.push(pieceOf(entry, piece));
  }
  return { ...sorted, events };
}

function pieceOf<At extends Instant>({ earliestAt, likelyAt, latestAt }: TimedEvent<At>, piece: Exit): TimedEvent<At> {
  const { lowerGrams, grams, upperGrams } = piece.mass;
  assertRange(lowerGrams, grams, piece.id);
  assertRange(grams, upperGrams, piece.id);
  return { event: piece, earliestAt, likelyAt, latestAt };
}
