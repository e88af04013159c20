import type { EntityTarget, ObjectLiteral } from 'typeorm';
import type { Instant } from '../platform/clock.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Columns, Tx } from '../platform/database/unit-of-work.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';

/** What a new version says of its beginning, and what is known. */
export interface StatedBeginning {
  readonly validFrom: Instant | null;
  readonly reason: string | null;
  readonly now: Instant;
  /** From when on the latest good version is valid; null: this is the first. */
  readonly latest: Instant | null;
}

/**
 * From when on a rule of the house is valid. The first version may reach back; a later one never does, since what was
 * judged by the earlier one stays judged.
 *
 * @throws {Refusal} `valid-from-not-later`, `valid-from-in-the-past`
 */
export function settleRuleBeginning({ validFrom, now, latest }: StatedBeginning): Instant {
  const at = validFrom ?? now;
  refuseNotLater(at, latest);
  if (latest !== null && at < now) throw new Refusal('valid-from-in-the-past', { stated: at, now });
  return at;
}

/**
 * From when on something has been so on the floor. It has happened, so it may be entered late, but not ahead.
 *
 * @throws {Refusal} `valid-from-not-later`, and those of `settleOccurredAt`
 */
export function settleFactBeginning({ validFrom, reason, now, latest }: StatedBeginning): Instant {
  const isFirst = latest === null && validFrom !== null && validFrom <= now;
  const at = isFirst ? validFrom : settleOccurredAt(validFrom, now, reason).occurredAt;
  refuseNotLater(at, latest);
  return at;
}

/** @throws {Refusal} `valid-from-not-later` when another version from the same instant was quicker */
export async function insertVersion<Row extends ObjectLiteral & { validFrom: string }>(
  tx: Tx,
  entity: EntityTarget<Row>,
  row: Columns<Row> & { readonly validFrom: string },
): Promise<void> {
  try {
    await tx.insert(entity, row);
  } catch (error) {
    if (isTakenKey(error)) throw new Refusal('valid-from-not-later', { stated: row.validFrom, latest: row.validFrom });
    throw error;
  }
}

function refuseNotLater(at: Instant, latest: Instant | null): void {
  if (latest !== null && at <= latest) throw new Refusal('valid-from-not-later', { stated: at, latest });
}
