import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { chainStart, entryHash } from './chain.js';
import type { JournalEntry } from './journal-entry.entity.js';

/** What the verification of one site's chain found. */
export interface Verification {
  readonly siteId: string;
  readonly entries: number;
  readonly head: string;
  /** The first entry that does not fit, and why; null when all fit. */
  readonly misfit: { readonly sequence: number; readonly why: Misfit } | null;
}

export type Misfit = 'sequence-gap' | 'previous-hash' | 'own-hash' | 'subjects' | 'head' | 'given-head-not-found';

const pageSize = 1000;

/**
 * Walks a site's chain from its start, page by page. A cut tail cannot be seen from inside: give the head that an
 * account or a backup printed, and the chain must hold an entry with that hash.
 */
export async function verifyJournal(from: ReadFrom, siteId: string, givenHead: string | null): Promise<Verification> {
  let last = { sequence: 0, hash: chainStart };
  let sawGivenHead = givenHead === null || givenHead === chainStart;
  for (;;) {
    const page = await pageAfter(from, siteId, last.sequence);
    const subjects = await subjectsOf(from, siteId, last.sequence, page.at(-1)?.sequence ?? 0);
    for (const entry of page) {
      const why = misfitOf(entry, last, subjects.get(entry.sequence) ?? []);
      if (why !== null)
        return { siteId, entries: last.sequence, head: last.hash, misfit: { sequence: entry.sequence, why } };
      last = { sequence: entry.sequence, hash: entry.hash };
      sawGivenHead ||= entry.hash === givenHead;
    }
    if (page.length < pageSize) break;
  }
  const ended = { siteId, entries: last.sequence, head: last.hash };
  if (!(await isHead(from, siteId, last))) return { ...ended, misfit: { sequence: last.sequence, why: 'head' } };
  return { ...ended, misfit: sawGivenHead ? null : { sequence: last.sequence, why: 'given-head-not-found' } };
}

/** The sites that have a chain. */
export async function chainedSites(from: ReadFrom): Promise<readonly string[]> {
  const rows = await from.sql<{ siteId: string }>`SELECT "site_id" AS "siteId" FROM "journal_head" ORDER BY "site_id"`;
  return rows.map((row) => row.siteId);
}

function misfitOf(
  entry: JournalEntry,
  last: { readonly sequence: number; readonly hash: string },
  subjects: readonly string[],
): Misfit | null {
  if (entry.sequence !== last.sequence + 1) return 'sequence-gap';
  if (entry.previousHash !== last.hash) return 'previous-hash';
  if (entryHash(entry) !== entry.hash) return 'own-hash';
  const touched = JSON.parse(entry.touches) as { kind: string; id: string }[];
  const named = [{ kind: entry.subjectKind, id: entry.subjectId }, ...touched].map(({ kind, id }) => `${kind} ${id}`);
  return named.sort().join('\n') === [...subjects].sort().join('\n') ? null : 'subjects';
}

async function pageAfter(from: ReadFrom, siteId: string, sequence: number): Promise<JournalEntry[]> {
  const rows = await from.sql<JournalEntry>`
    SELECT "site_id" AS "siteId", "sequence", "id", "recorded_at" AS "recordedAt", "occurred_at" AS "occurredAt",
      "stated_at" AS "statedAt", "person_id" AS "personId", "device_id" AS "deviceId",
      "device_offset_milliseconds" AS "deviceOffsetMilliseconds", "action", "subject_kind" AS "subjectKind",
      "subject_id" AS "subjectId", "touches", "before", "after", "reason", "previous_hash" AS "previousHash", "hash"
    FROM "journal_entry" WHERE "site_id" = ${siteId} AND "sequence" > ${sequence}
    ORDER BY "sequence" LIMIT ${pageSize}`;
  return rows.map((row) => ({
    ...row,
    sequence: toWhole(row.sequence),
    deviceOffsetMilliseconds: row.deviceOffsetMilliseconds === null ? null : toWhole(row.deviceOffsetMilliseconds),
  }));
}

async function subjectsOf(from: ReadFrom, siteId: string, after: number, upTo: number): Promise<Map<number, string[]>> {
  const rows = await from.sql<{ sequence: number | string; kind: string; id: string }>`
    SELECT "sequence", "kind", "id" FROM "journal_subject"
    WHERE "site_id" = ${siteId} AND "sequence" > ${after} AND "sequence" <= ${upTo}`;
  const bySequence = new Map<number, string[]>();
  for (const row of rows) {
    const sequence = toWhole(row.sequence);
    bySequence.set(sequence, [...(bySequence.get(sequence) ?? []), `${row.kind} ${row.id}`]);
  }
  return bySequence;
}

async function isHead(from: ReadFrom, siteId: string, last: { sequence: number; hash: string }): Promise<boolean> {
  const [head] = await from.sql<{ sequence: number | string; hash: string }>`
    SELECT "sequence", "hash" FROM "journal_head" WHERE "site_id" = ${siteId}`;
  return head === undefined ? last.sequence === 0 : toWhole(head.sequence) === last.sequence && head.hash === last.hash;
}
