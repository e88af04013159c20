import { canonicalText, type Canonical } from '../platform/canonical-text.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { chainStart, entryHash } from './chain.js';
import type { Asked, Change, EntryDraft, Subject } from './entry-draft.js';
import { JournalEntry } from './journal-entry.entity.js';
import { JournalHead } from './journal-head.entity.js';
import { JournalSubject } from './journal-subject.entity.js';

/** Appends the entry to its site's chain: the last thing that a unit does. Answers the entry's sequence. */
export async function appendEntry(tx: Tx, asked: Asked, change: Change, draft: EntryDraft): Promise<number> {
  const siteId = asked.actor.siteId;
  const head = await lockHead(tx, siteId);
  const others = (draft.touches ?? []).filter((other) => !isSame(other, draft.subject));
  const touches = others.filter((other, place) => others.findIndex((one) => isSame(one, other)) === place);
  const unsigned = {
    siteId,
    sequence: head.sequence + 1,
    id: change.entryId,
    recordedAt: change.recordedAt,
    occurredAt: draft.occurredAt ?? change.recordedAt,
    statedAt: draft.statedAt ?? null,
    personId: asked.actor.personId,
    deviceId: asked.actor.deviceId,
    deviceOffsetMilliseconds: asked.deviceOffsetMilliseconds ?? null,
    action: draft.action,
    subjectKind: draft.subject.kind,
    subjectId: draft.subject.id,
    touches: canonicalText(touches.map(({ kind, id }) => ({ kind, id }))),
    before: textOrNull(draft.before),
    after: textOrNull(draft.after),
    reason: draft.reason ?? null,
    previousHash: head.hash,
  };
  const hash = entryHash(unsigned);
  const subjects = [draft.subject, ...touches];
  await tx.insert(
    JournalSubject,
    subjects.map(({ kind, id }) => ({ siteId, sequence: unsigned.sequence, kind, id })),
  );
  await tx.insert(JournalEntry, { ...unsigned, hash });
  await tx.update(JournalHead, { siteId }, { sequence: unsigned.sequence, hash });
  return unsigned.sequence;
}

/** Reads the head for writing: on PostgreSQL the row stays locked until the commit that follows at once. */
export async function lockHead(tx: Tx, siteId: string): Promise<{ sequence: number; hash: string }> {
  const there = await takeHead(tx, siteId);
  if (there !== null) return there;
  await tx.sql`INSERT INTO "journal_head" ("site_id", "sequence", "hash") VALUES (${siteId}, 0, ${chainStart}) ON CONFLICT DO NOTHING`;
  const begun = await takeHead(tx, siteId);
  if (begun === null) throw new Error('the journal has no head');
  return begun;
}

/** An update that changes nothing takes the row's lock on both databases. */
async function takeHead(tx: Tx, siteId: string): Promise<{ sequence: number; hash: string } | null> {
  const [row] = await tx.sql<{ sequence: number | string; hash: string }>`
    UPDATE "journal_head" SET "sequence" = "sequence" WHERE "site_id" = ${siteId} RETURNING "sequence", "hash"`;
  return row === undefined ? null : { sequence: toWhole(row.sequence), hash: row.hash };
}

function isSame(one: Subject, other: Subject): boolean {
  return one.kind === other.kind && one.id === other.id;
}

function textOrNull(content: Canonical | undefined): string | null {
  return content === undefined || content === null ? null : canonicalText(content);
}
