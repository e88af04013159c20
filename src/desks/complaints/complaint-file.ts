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
import type { ReadFrom } from '../../platform/database/reading.js';
import { recallsFrom, type RecallRow } from '../../recalls/recalls.js';
import { readThread } from '../../tracing/read-thread.js';
import type { Thread, ThreadSubject } from '../../tracing/thread.js';

/** What the answer to the customer is written from. */
export interface ComplaintLetter {
  readonly complaint: ComplaintRow;
  readonly steps: readonly StepRow[];
  /** Null also for whoever may not handle complaints. */
  readonly contact: ContactRow | null;
  /** What it is about; null where that is not known. */
  readonly subject: ThreadSubject | null;
  readonly readAt: string;
}

/** All that is shown of a complaint. */
export interface ComplaintFile extends ComplaintLetter {
  /** Null where it is not known what it is about. */
  readonly thread: Thread | null;
  /** Null where it is not known when the packs were packed. */
  readonly standOuts: readonly StandOut[] | null;
  readonly similar: readonly SimilarComplaint[];
  /** That began with it. */
  readonly recalls: readonly RecallRow[];
  readonly names: ReadonlyMap<string, string>;
  readonly sequence: number;
}

@Injectable()
export class ComplaintFiles {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  /** A complaint with its thread, what stands out, and the complaints like it. @throws {NotFound} `complaint` */
  read(actor: Actor, complaintId: string): Promise<ComplaintFile> {
    const { siteId } = actor;
    return this.heavy.snapshot(async (from) => {
      const letter = await this.letterOf(from, actor, complaintId);
      const { complaint, steps, subject, readAt } = letter;
      const thread = subject === null ? null : await readThread(from, siteId, subject, readAt);
      // Packs of a liner lot are those that its bags may be in: its own thread has the bags alone.
      const sources = subject?.kind === 'liner-lot' ? null : (thread?.sources ?? null);
      return {
        ...letter,
        thread,
        standOuts: thread === null ? null : await standsOut(from, siteId, thread),
        similar: await similarComplaints(from, complaint, readAt, sources),
        recalls: await recallsFrom(from, siteId, { kind: 'complaint', id: complaint.id }),
        names: await namesOf(
          from,
          steps.flatMap(({ personId }) => personId ?? []),
        ),
        sequence: await lastSequenceOf(from, { kind: 'complaint', id: complaint.id }),
      };
    });
  }

  /** What the letter says of it: its thread is not asked for. @throws {NotFound} `complaint` */
  letter(actor: Actor, complaintId: string): Promise<ComplaintLetter> {
    return this.heavy.snapshot((from) => this.letterOf(from, actor, complaintId));
  }

  private async letterOf(from: ReadFrom, { siteId, roles }: Actor, complaintId: string): Promise<ComplaintLetter> {
    const complaint = await findComplaint(from, siteId, complaintId);
    return {
      complaint,
      steps: await stepsOf(from, complaint.id),
      contact: mayDo(roles, 'handle-complaints') ? await contactOf(from, complaint.id) : null,
      subject: await subjectOfComplaint(from, complaint),
      readAt: this.clock.now(),
    };
  }
}
