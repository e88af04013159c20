import { canonicalText, type Canonical } from '../canonical-text.js';
import type { Tx } from '../database/unit-of-work.js';
import { leaveJob } from '../jobs/outbox.js';
import { Paper } from './paper.entity.js';

/** A paper to be given out. Its `id` comes from `Ids`, as does `jobId`. */
export interface PaperDraft {
  readonly id: string;
  readonly jobId: string;
  readonly siteId: string;
  readonly kind: string;
  readonly edition: string;
  readonly number: string | null;
  readonly subject: { readonly kind: string; readonly id: string };
  readonly facts: Canonical;
  readonly issuedAt: string;
  readonly personId: string | null;
}

/** Freezes a paper's facts in the unit and leaves its PDF to a job: number and facts are kept even if the printer burns. */
export async function issuePaper(tx: Tx, draft: PaperDraft): Promise<void> {
  await tx.insert(Paper, {
    id: draft.id,
    siteId: draft.siteId,
    kind: draft.kind,
    edition: draft.edition,
    number: draft.number,
    subjectKind: draft.subject.kind,
    subjectId: draft.subject.id,
    facts: canonicalText(draft.facts),
    issuedAt: draft.issuedAt,
    personId: draft.personId,
    voidedBy: null,
  });
  await leaveJob(tx, { id: draft.jobId, kind: 'render-paper', payload: { paperId: draft.id }, at: draft.issuedAt });
}
