import { findHold } from '../disposition/holds.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { OpenRecallForm } from './recall.form.js';

/** What a recall begins with, looked up where it can be: complaints stand beside recalls and are known by id alone. */
export async function findOrigin(
  from: ReadFrom,
  siteId: string,
  { originKind = null, originId = null }: Pick<OpenRecallForm, 'originKind' | 'originId'>,
): Promise<{ readonly originKind: 'hold' | 'complaint' | null; readonly originId: string | null }> {
  if (originKind === null || originId === null) return { originKind: null, originId: null };
  if (originKind === 'hold') await findHold(from, siteId, originId);
  return { originKind, originId };
}
