import { Injectable } from '@nestjs/common';
import { Clock } from '../platform/clock.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { readThread } from '../tracing/read-thread.js';
import type { Thread } from '../tracing/thread.js';
import { findSubjects, type Finding } from './find-subjects.js';

/** A typed code leads to a thread, to a choice, or to nothing. */
export type Found = { readonly thread: Thread } | { readonly choices: readonly Finding[] };

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
      const found = await findSubjects(from, siteId, { code: asked.code, localTime: asked.localTime, now });
      const chosen =
        asked.meant === null ? found : found.filter(({ subject }) => choiceKey({ subject }) === asked.meant);
      const [only] = chosen;
      if (only === undefined || chosen.length > 1) return { choices: chosen };
      return { thread: await readThread(from, siteId, only.subject, now) };
    });
  }
}

/** What tells the choices of one code apart: the thing, and when it was coded where the code came back. */
export function choiceKey({ subject }: Pick<Finding, 'subject'>): string {
  return subject.codedBetween === null ? subject.id : `${subject.id}@${subject.codedBetween.fromAt.slice(0, 10)}`;
}
