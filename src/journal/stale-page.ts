import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';
import type { Subject } from './entry-draft.js';

/** The last journal sequence that speaks of a thing; 0 when none does. Forms carry it. */
export async function lastSequenceOf(from: ReadFrom, subject: Subject): Promise<number> {
  const [row] = await from.sql<{ last: number | string | null }>`
    SELECT MAX("sequence") AS "last" FROM "journal_subject" WHERE "kind" = ${subject.kind} AND "id" = ${subject.id}`;
  return toWhole(row?.last ?? 0);
}

/** @throws {Refusal} `page-is-stale` when the thing moved on since the page was made */
export async function refuseStalePage(
  from: ReadFrom,
  seen: { readonly subject: Subject; readonly sequence: number },
): Promise<void> {
  const last = await lastSequenceOf(from, seen.subject);
  if (last > seen.sequence) {
    throw new Refusal('page-is-stale', {
      kind: seen.subject.kind,
      id: seen.subject.id,
      seenSequence: seen.sequence,
      lastSequence: last,
    });
  }
}
