import { Refusal } from '../platform/refusal.js';
import type { HoldPart, HoldScope } from './standings.js';

/** Which part is meant; the whole, where nothing is said. */
export function partOf({ fromCount, toCount, fromAt, untilAt }: Partial<HoldPart>): HoldPart {
  const [from, to] = [fromCount ?? null, toCount ?? null];
  return { fromCount: from, toCount: to, fromAt: fromAt ?? null, untilAt: untilAt ?? null };
}

/**
 * A part has two ends, in order: only packs of a run are counted, only a run and a shift are parted by time, and a shift
 * always is.
 *
 * @throws {Refusal} `hold-range-not-usable`, `hold-times-not-usable`
 */
export function refuseUnusablePart({ kind }: HoldScope, { fromCount, toCount, fromAt, untilAt }: HoldPart): void {
  const isCounted = fromCount !== null || toCount !== null;
  const isInOrder = fromCount !== null && toCount !== null && fromCount < toCount;
  if (isCounted && !(kind === 'packing-run' && isInOrder)) {
    throw new Refusal('hold-range-not-usable', { fromCount, toCount });
  }
  const isShift = kind === 'dryer-shift' || kind === 'packing-shift';
  const isTimed = fromAt !== null || untilAt !== null;
  if (!isTimed && !isShift) return;
  const isFromUntil = fromAt !== null && untilAt !== null && fromAt < untilAt;
  if (!isFromUntil || isCounted || !(isShift || kind === 'packing-run')) {
    throw new Refusal('hold-times-not-usable', { fromAt, untilAt });
  }
}
