import { makeDocumentNumber } from '../core/identifiers/document-number.js';
import { localMomentAt } from '../core/shift-calendar/local-time.js';
import type { Canonical } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import { takeNumber } from '../platform/database/number-series.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { issuePaper } from '../platform/printing/issue-paper.js';
import { siteOf } from '../plant/plant-facts.js';
import { notePrefix } from './deliveries.js';
import { deliveryNoteEdition, deliveryNoteKind } from './delivery-note.paper.js';
import type { NoteRow } from './delivery-rows.js';
import { noteFacts, type NoteDraft } from './note-facts.js';

/** Who issues a note, and when. */
export interface NoteIssue extends Omit<NoteDraft, 'number' | 'version' | 'replaces'> {
  readonly nextId: () => string;
  readonly personId: string | null;
  readonly issuedAt: Instant;
}

/**
 * Numbers a delivery note and freezes what it says. The number is taken in the unit: if the unit fails none is missing. Each note
 * has a number of its own; one that stands in the place of a void note says so.
 */
export async function issueNote(tx: Tx, issue: NoteIssue): Promise<{ paperId: string; number: string }> {
  const { delivery, issuedAt, nextId, personId } = issue;
  const { timeZone } = await siteOf(tx, delivery.siteId);
  const year = Number(localMomentAt(timeZone, issuedAt).on.slice(0, 4));
  const serial = await takeNumber(tx, delivery.siteId, `delivery-note-${year}`);
  const number = makeDocumentNumber({ prefix: notePrefix, year, serial });
  const earlier = await notesOf(tx, delivery.id);
  const replaces = earlier.at(-1)?.number ?? null;
  const facts = await noteFacts(tx, { ...issue, number, version: earlier.length + 1, replaces });
  const paperId = nextId();
  await issuePaper(tx, {
    id: paperId,
    jobId: nextId(),
    siteId: delivery.siteId,
    kind: deliveryNoteKind,
    edition: deliveryNoteEdition,
    number,
    subject: { kind: 'delivery', id: delivery.id },
    facts: facts as unknown as Canonical,
    issuedAt,
    personId,
  });
  return { paperId, number };
}

/** All notes of a delivery, the void ones with the reason why, in the order of issue. */
export async function notesOf(from: ReadFrom, deliveryId: string): Promise<readonly NoteRow[]> {
  const rows = await from.sql<{
    paperId: string;
    number: string;
    issuedAt: Instant;
    voidedBy: string | null;
    voidReason: string | null;
  }>`
    SELECT p."id" AS "paperId", p."number", p."issued_at" AS "issuedAt", p."voided_by" AS "voidedBy",
      e."reason" AS "voidReason"
    FROM "paper" p LEFT JOIN "journal_entry" e ON e."id" = p."voided_by"
    WHERE p."subject_kind" = 'delivery' AND p."subject_id" = ${deliveryId} AND p."kind" = ${deliveryNoteKind}
    ORDER BY p."issued_at", p."id"`;
  return rows.map(({ voidedBy, ...row }, place) => ({ ...row, version: place + 1, isVoid: voidedBy !== null }));
}
