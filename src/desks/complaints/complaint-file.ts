import { Injectable } from '@nestjs/common';
import {
  contactOf,
  findComplaint,
  stepsOf,
  subjectOfComplaint,
  type ComplaintRow,
  type ContactRow,
  type StepRow,
} from '../../complaints/complaints.js';
import { similarComplaints, type SimilarComplaint } from '../../complaints/similar-complaints.js';
import { standsOut, type StandOut } from '../../complaints/stand-out.js';
import { lastSequenceOf } from '../../journal/stale-page.js';
import { namesOf } from '../../people/people.js';
import { mayDo, type Actor } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { readThread } from '../../tracing/read-thread.js';
import type { Thread } from '../../tracing/thread.js';

/** All that is shown of a complaint. */
export interface ComplaintFile {
  readonly complaint: ComplaintRow;
  readonly steps: readonly StepRow[];
  /** Null also for whoever may not handle complaints. */
  readonly contact: ContactRow | null;
  /** Null where it is not known what it is about. */
  readonly thread: Thread | null;
  /** Null where it is not known when the packs were packed. */
  readonly standOuts: readonly StandOut[] | null;
  readonly similar: readonly SimilarComplaint[];
  readonly names: ReadonlyMap<string, string>;
  readonly sequence: number;
  readonly readAt: string;
}

@Injectable()
export class ComplaintFiles {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  /** A complaint with its thread, what stands out, and the complaints like it. @throws {NotFound} `complaint` */
  read(actor: Actor, complaintId: string): Promise<ComplaintFile> {
    const readAt = this.clock.now();
    const { siteId, roles } = actor;
    return this.heavy.snapshot(async (from) => {
      const complaint = await findComplaint(from, siteId, complaintId);
      const subject = await subjectOfComplaint(from, complaint);
      const thread = subject === null ? null : await readThread(from, siteId, subject, readAt);
      const steps = await stepsOf(from, complaint.id);
      return {
        complaint,
        steps,
        contact: mayDo(roles, 'handle-complaints') ? await contactOf(from, complaint.id) : null,
        thread,
        standOuts: thread === null ? null : await standsOut(from, siteId, thread),
        similar: await similarComplaints(from, complaint, readAt),
        names: await namesOf(
          from,
          steps.flatMap(({ personId }) => personId ?? []),
        ),
        sequence: await lastSequenceOf(from, { kind: 'complaint', id: complaint.id }),
        readAt,
      };
    });
  }
}
