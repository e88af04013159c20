import { canonicalText, sha256 } from '../platform/canonical-text.js';
import type { JournalEntry } from './journal-entry.entity.js';

/** What the first entry of a chain names as the entry before it. */
export const chainStart = '0'.repeat(64);

/** The hash of an entry: SHA-256 over the canonical text of all its other columns, the previous hash included. */
export function entryHash(entry: Omit<JournalEntry, 'hash'>): string {
  return sha256(
    canonicalText({
      siteId: entry.siteId,
      sequence: entry.sequence,
      id: entry.id,
      recordedAt: entry.recordedAt,
      occurredAt: entry.occurredAt,
      statedAt: entry.statedAt,
      personId: entry.personId,
      deviceId: entry.deviceId,
      deviceOffsetMilliseconds: entry.deviceOffsetMilliseconds,
      action: entry.action,
      subjectKind: entry.subjectKind,
      subjectId: entry.subjectId,
      touches: entry.touches,
      before: entry.before,
      after: entry.after,
      reason: entry.reason,
      previousHash: entry.previousHash,
    }),
  );
}
