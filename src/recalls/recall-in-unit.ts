import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { findRecall, type RecallRow } from './recalls.js';

/**
 * A recall that can still change.
 *
 * @throws {NotFound} `recall`
 * @throws {Refusal} `recall-signed`
 */
export async function openRecallOf(tx: Tx, siteId: string, recallId: string): Promise<RecallRow> {
  const recall = await findRecall(tx, siteId, recallId);
  if (recall.signedAt !== null) throw new Refusal('recall-signed', { recall: recall.number });
  return recall;
}
