import { Injectable } from '@nestjs/common';
import { subjectOfComplaint, type ComplaintRow } from '../complaints/complaints.js';
import { Clock } from '../platform/clock.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import type { RecallRow } from '../recalls/recalls.js';
import { readThread } from '../tracing/read-thread.js';
import type { Thread } from '../tracing/thread.js';
import { findAnything, type Findings } from './find-subjects.js';
import { choiceKey, type Fit } from './finding.js';

/** A typed code leads to a thread, to a complaint, to a recall, to a choice, or to nothing. */
export type Found =
  | { readonly thread: Thread; readonly fits: readonly Fit[] }
  | { readonly complaint: ComplaintRow }
  | { readonly recall: RecallRow }
  | { readonly choices: Findings };

/** Finds what a code means and follows it, both in one unchanging view of the records. */
@Injectable()
export class FindThread {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  find(
    siteId: string,
    asked: { readonly code: string; readonly localTime: string | null; readonly meant: string | null },
  ): Promise<Found> {
    const now = this.clock.now();
    return this.heavy.snapshot(async (from) => {
      const { code, localTime, meant } = asked;
      const found = await findAnything(from, siteId, { code, localTime, now });
      const findings = found.findings.filter((finding) => meant === null || choiceKey(finding) === meant);
      const complaints = found.complaints.filter(({ complaint }) => meant === null || complaint.id === meant);
      const recalls = found.recalls.filter(({ recall }) => meant === null || recall.id === meant);
      const [[only], [complaint], [recall]] = [findings, complaints, recalls];
      const count = findings.length + complaints.length + recalls.length;
      if (count === 1 && complaint !== undefined) return { complaint: complaint.complaint };
      if (count === 1 && recall !== undefined) return { recall: recall.recall };
      const isPlain = only !== undefined && count === 1 && (!only.isDoubtful || meant !== null);
      if (!isPlain) return { choices: { ...found, findings, complaints, recalls } };
      const fits = only.tier === 'as-typed' ? [] : only.fits;
      return { thread: await readThread(from, siteId, only.subject, now), fits };
    });
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
