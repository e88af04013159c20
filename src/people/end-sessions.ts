import type { Instant } from '../platform/clock.js';
import type { Columns, Tx } from '../platform/database/unit-of-work.js';
import { Session } from './session.entity.js';

/**
 * Ends sessions. What a device was given in them, to send waiting entries later, stays good for what happened until
 * now and for nothing after.
 */
export async function endSessions(tx: Tx, where: Columns<Session>, at: Instant): Promise<void> {
  for (const { tokenHash } of await tx.find(Session, where)) {
    await tx.sql`
      UPDATE "queue_proof" SET "signed_out_at" = ${at} WHERE "session_hash" = ${tokenHash} AND "signed_out_at" > ${at}`;
  }
  await tx.remove(Session, where);
}
