import { canonicalText, type Canonical } from '../canonical-text.js';
import type { Tx } from '../database/unit-of-work.js';
import { OutboxJob } from './outbox-job.entity.js';

/** The same, unless one that is waiting will look at this change too. */
export async function leaveJobOnce(tx: Tx, job: Parameters<typeof leaveJob>[1]): Promise<void> {
  const waiting = await tx.sql`
    SELECT "id" FROM "outbox_job" WHERE "finished_at" IS NULL AND "leased_until" IS NULL AND "kind" = ${job.kind}
      AND "payload" = ${canonicalText(job.payload)} LIMIT 1`;
  if (waiting.length === 0) await leaveJob(tx, job);
}

/** Leaves a job that comes again by itself, unless it is there, waiting or at work. */
export async function leaveRecurringJob(tx: Tx, job: Parameters<typeof leaveJob>[1]): Promise<void> {
  const there = await tx.sql`
    SELECT "id" FROM "outbox_job" WHERE "finished_at" IS NULL AND "kind" = ${job.kind}
      AND "payload" = ${canonicalText(job.payload)} LIMIT 1`;
  if (there.length === 0) await leaveJob(tx, job);
}

/** Leaves a job in the unit: it is done after the commit, and not at all when the unit fails. */
export async function leaveJob(
  tx: Tx,
  job: { readonly id: string; readonly kind: string; readonly payload: Canonical; readonly at: string },
): Promise<void> {
  await tx.insert(OutboxJob, {
    id: job.id,
    kind: job.kind,
    payload: canonicalText(job.payload),
    createdAt: job.at,
    runAfter: job.at,
    leasedUntil: null,
    attempts: 0,
    finishedAt: null,
    lastError: null,
  });
}
