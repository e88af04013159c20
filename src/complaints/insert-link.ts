import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { subjectOfSite } from '../tracing/subject-by-id.js';
import { ComplaintLink } from './complaint-link.entity.js';
import type { LinkComplaintForm } from './complaint.form.js';

/** What is linked, as rows and the journal hold it. */
export type LinkContent = Pick<
  ComplaintLink,
  'subjectKind' | 'subjectId' | 'localTime' | 'printedAt' | 'codedFromAt' | 'codedUntilAt'
>;

interface LinkPlace {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly complaintId: string;
  readonly at: Instant;
}

/** Links a complaint to a thing that is there, at this site. @throws {NotFound} */
export async function insertLink(
  tx: Tx,
  { nextId, siteId, complaintId, at }: LinkPlace,
  form: LinkComplaintForm | null,
): Promise<LinkContent | null> {
  if (form === null) return null;
  const { subjectKind, subjectId } = form;
  await subjectOfSite(tx, siteId, subjectKind, subjectId);
  const link = {
    subjectKind,
    subjectId,
    localTime: form.localTime ?? null,
    printedAt: form.printedAt ?? null,
    codedFromAt: form.codedFromAt ?? null,
    codedUntilAt: form.codedUntilAt ?? null,
  };
  await tx.insert(ComplaintLink, { id: nextId(), complaintId, ...link, linkedAt: at, voidedBy: null });
  return link;
}
