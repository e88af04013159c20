import { findComplaint } from '../../complaints/complaints.js';
import { findHold } from '../../disposition/holds.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** The hold or complaint that a recall begins with, as people know it. */
export interface RecallOrigin {
  readonly kind: 'hold' | 'complaint';
  readonly id: string;
  readonly number: string;
  readonly href: string;
}

/** Null where it begins with none. @throws {NotFound} */
export async function originOf(
  from: ReadFrom,
  siteId: string,
  { originKind, originId }: { readonly originKind?: string | null; readonly originId?: string | null },
): Promise<RecallOrigin | null> {
  if (originId == null) return null;
  if (originKind === 'hold') {
    const { id, number } = await findHold(from, siteId, originId);
    return { kind: 'hold', id, number, href: `/quality/holds/${id}` };
  }
  if (originKind !== 'complaint') return null;
  const { id, number } = await findComplaint(from, siteId, originId);
  return { kind: 'complaint', id, number, href: `/quality/complaints/${id}` };
}
