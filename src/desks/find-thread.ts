import { Injectable } from '@nestjs/common';
import { subjectOfComplaint, type ComplaintRow } from '../complaints/complaints.js';
import { Clock } from '../platform/clock.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import type { HeldAnswer } from '../platform/threads/shared-places.js';
import { readThread } from '../tracing/read-thread.js';
import type { Thread } from '../tracing/thread.js';
import { question, type AskedThread, type Found } from './thread-of-code.question.js';

export type { Found } from './thread-of-code.question.js';

/** A typed code, the time of day that stands beside it, and what was chosen where it meant several things. */
export type CodeAskedFor = Pick<AskedThread, 'code' | 'localTime' | 'meant' | 'isDrawn'>;

/** Finds what a code means and follows it, both in one unchanging view of the records. */
@Injectable()
export class FindThread {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  async find(siteId: string, asked: CodeAskedFor): Promise<Found> {
    return JSON.parse(await this.heavy.ask(question, { siteId, ...asked, now: this.clock.now() })) as Found;
  }

  /** The same as JSON, for whoever passes it on. */
  findHeld(siteId: string, asked: CodeAskedFor): Promise<HeldAnswer> {
    return this.heavy.askHeld(question, { siteId, ...asked, now: this.clock.now() });
  }

  /** The thread of what a complaint is about; null where that is not known. */
  ofComplaint(siteId: string, complaint: ComplaintRow): Promise<Thread | null> {
    const now = this.clock.now();
    return this.heavy.snapshot(async (from) => {
      const subject = await subjectOfComplaint(from, complaint);
      return subject === null ? null : readThread(from, siteId, subject, now);
    });
  }
}
