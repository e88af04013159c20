import { TakeComplaint } from '../../complaints/take-complaint.js';
import { TakeComplaintStep } from '../../complaints/take-complaint-step.js';
import { localMomentAt } from '../../core/shift-calendar/local-time.js';
import { shifted } from '../../platform/clock.js';
import { timeZone } from '../life/minutes.js';
import type { DemoHand } from '../set-up/demo-hand.js';

const threeMinutes = 180_000;

interface Handover {
  readonly before: string;
  readonly beforeCode: string;
  readonly after: string;
  readonly afterCode: string;
  readonly at: string;
}

/**
 * Three invented complaints: two about packs of two lots, minutes before and after the code changed, so that they share
 * a bag across their lots; and one that nobody could read a code of, answered and closed.
 */
export async function takeInComplaints(hand: DemoHand): Promise<void> {
  const change = await codeChange(hand);
  if (change === null) return;
  const take = hand.give(TakeComplaint);
  const step = hand.give(TakeComplaintStep);
  const before = localMomentAt(timeZone, shifted(change.at, -threeMinutes)).time.slice(0, 5);
  const after = localMomentAt(timeZone, shifted(change.at, threeMinutes)).time.slice(0, 5);
  await take.execute(hand.asked('quality'), {
    ...{
      codeAsRead: `${change.beforeCode} ${before}`,
      subjectKind: 'lot',
      subjectId: change.before,
      localTime: before,
    },
    ...{ category: 'foreign-body', severity: 'food-safety', words: 'A black bit, hard, the size of a pinhead' },
    ...{ boughtWhere: 'Corner shop, Fernhill (invented)', packCount: 1 },
    ...{ contactName: 'Una Fennimore (invented)', contactReach: 'una@fernhill.example' },
  });
  const colour = await take.execute(hand.asked('clerk'), {
    ...{ codeAsRead: `${change.afterCode} ${after}`, subjectKind: 'lot', subjectId: change.after, localTime: after },
    ...{ category: 'colour', severity: 'not-as-sold', words: 'Greyer than the pack beside it' },
    ...{ boughtWhere: 'Market hall, Larch Bay (invented)', packCount: 2 },
  });
  await step.execute(hand.asked('quality'), colour.id, { kind: 'look-into', words: null });
  const torn = await take.execute(hand.asked('clerk'), {
    ...{ category: 'damaged-pack', severity: 'nuisance', words: 'The top fold was open; the code is gone with it' },
    ...{ boughtWhere: 'Corner shop, Fernhill (invented)', packCount: 1 },
  });
  const steps = [
    { kind: 'cause', words: 'Not found: without a code nobody knows which line it was' },
    { kind: 'action', words: 'Seals of all lines looked at; none is worn' },
    { kind: 'answer', words: 'We looked at our seals and found none worn. Thank you for telling us.', way: 'letter' },
    { kind: 'close', words: 'Answered; nothing more can be found' },
  ] as const;
  for (const one of steps) await step.execute(hand.asked('quality'), torn.id, { way: null, ...one });
}

/** The last time that a run went from one code to another while it ran. */
async function codeChange(hand: DemoHand): Promise<Handover | null> {
  const rows = await hand.reader.sql<{ runId: string; lotId: string; code: string; changedAt: string }>`
    SELECT c."run_id" AS "runId", c."lot_id" AS "lotId", l."code", c."changed_at" AS "changedAt"
    FROM "coder_change" c JOIN "lot" l ON l."id" = c."lot_id" WHERE c."voided_by" IS NULL
    ORDER BY c."run_id" DESC, c."changed_at" DESC`;
  for (const [place, { runId, lotId, code, changedAt }] of rows.entries()) {
    const earlier = rows[place + 1];
    if (earlier?.runId !== runId || earlier.lotId === lotId) continue;
    return { before: earlier.lotId, beforeCode: earlier.code, after: lotId, afterCode: code, at: changedAt };
  }
  return null;
}
