import { setImmediate } from 'node:timers/promises';
import { Inject, Injectable, Logger, type BeforeApplicationShutdown } from '@nestjs/common';
import { Clock, shifted, type Instant } from '../clock.js';
import { READER, type ReadFrom } from '../database/reading.js';
import { UnitOfWork } from '../database/unit-of-work.js';
import { OutboxJob } from './outbox-job.entity.js';
import { leaveRecurringJob } from './outbox.js';

/** Does one kind of job. It may be called again for a job that it has done already, and must answer the same. */
export type JobHandler = (payload: unknown) => Promise<void>;

/** Does a job that comes again: answers when, later than now. */
type RecurringJobHandler = (payload: unknown) => Promise<Instant>;

const leaseMilliseconds = 60_000;
const longestWaitMilliseconds = 3_600_000;

/** The one runner of jobs: takes them in order of their time, at least once each, and tries failed ones again later. */
@Injectable()
export class JobRunner implements BeforeApplicationShutdown {
  private readonly log = new Logger(JobRunner.name);
  private readonly handlers = new Map<string, (payload: unknown) => Promise<Instant | null>>();
  private working: Promise<void> | null = null;
  private wakeAgain = false;
  private timer: NodeJS.Timeout | null = null;
  private stopped = true;

  constructor(
    private readonly units: UnitOfWork,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  handle(kind: string, handler: JobHandler): void {
    this.add(kind, async (payload) => {
      await handler(payload);
      return null;
    });
  }

  /** The same for jobs that are never finished, but looked at again and again. */
  handleAgain(kind: string, handler: RecurringJobHandler): void {
    this.add(kind, handler);
  }

  private add(kind: string, handler: (payload: unknown) => Promise<Instant | null>): void {
    if (this.handlers.has(kind)) throw new Error(`two handlers for jobs of kind ${kind}`);
    this.handlers.set(kind, handler);
  }

  /** Begins to look for jobs, and looks again every `everyMilliseconds`. */
  start(everyMilliseconds = 2000): void {
    this.stopped = false;
    this.timer = setInterval(() => {
      this.wake();
    }, everyMilliseconds);
    this.timer.unref();
    this.wake();
  }

  /** Looks for jobs once whoever asks for something has had a turn; called after each accepted change, which is answered first. */
  wake(): void {
    if (this.stopped) return;
    if (this.working !== null) {
      this.wakeAgain = true;
      return;
    }
    this.wakeAgain = false;
    this.working = setImmediate()
      .then(() => this.drain())
      .catch((error: unknown) => {
        this.log.error(error);
      })
      .finally(() => {
        this.working = null;
        if (this.wakeAgain) this.wake();
      });
  }

  /** Does every job that is due, one after the other; in between, whoever asks for something has a turn. */
  async drain(): Promise<void> {
    for (let job = await this.take(); job !== null; job = await this.take()) {
      await this.perform(job);
      await setImmediate();
    }
  }

  /** Leaves a job that comes again, unless it is there: what an earlier release set up has left none. */
  async leaveAgain(job: Parameters<typeof leaveRecurringJob>[1]): Promise<void> {
    await this.units.run((tx) => leaveRecurringJob(tx, job));
  }

  /** Drops finished jobs that are older than `days`: they are not facts. */
  async forgetFinished(days: number): Promise<void> {
    const before = shifted(this.clock.now(), -days * 86_400_000);
    await this.units.run(async (tx) => {
      await tx.sql`DELETE FROM "outbox_job" WHERE "finished_at" IS NOT NULL AND "finished_at" < ${before}`;
    });
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.stopped = true;
    if (this.timer !== null) clearInterval(this.timer);
    await this.working;
  }

  /** Most looks, one after each change, find nothing: only for a job is a unit opened. */
  private async take(): Promise<OutboxJob | null> {
    const now = this.clock.now();
    if ((await dueJobs(this.reader, now)).length === 0) return null;
    return this.units.run(async (tx) => {
      const [due] = await dueJobs(tx, now);
      if (due === undefined) return null;
      const job = await tx.findOne(OutboxJob, { id: due.id });
      if (job === null) return null;
      const leasedUntil = shifted(now, leaseMilliseconds);
      const taken = await tx.update(
        OutboxJob,
        { id: job.id, leasedUntil: job.leasedUntil, finishedAt: null },
        { leasedUntil, attempts: job.attempts + 1 },
      );
      return taken === 1 ? { ...job, leasedUntil, attempts: job.attempts + 1 } : null;
    });
  }

  private async perform(job: OutboxJob): Promise<void> {
    const outcome = await this.attempt(job);
    await this.units.run(async (tx) => {
      await tx.update(OutboxJob, { id: job.id }, outcome);
    });
  }

  private async attempt(job: OutboxJob): Promise<Partial<OutboxJob>> {
    try {
      const handler = this.handlers.get(job.kind);
      if (handler === undefined) throw new Error(`nobody does jobs of kind ${job.kind}`);
      const again = await handler(JSON.parse(job.payload));
      if (again === null) return { finishedAt: this.clock.now(), leasedUntil: null, lastError: null };
      if (again <= this.clock.now()) throw new RangeError(`job ${job.kind} wants to come again at once`);
      return { runAfter: again, attempts: 0, leasedUntil: null, lastError: null };
    } catch (error) {
      const wait = Math.min(1000 * 2 ** job.attempts, longestWaitMilliseconds);
      const lastError = error instanceof Error ? error.message : String(error);
      this.log.warn({ job: job.id, kind: job.kind, attempts: job.attempts, lastError });
      return { leasedUntil: null, runAfter: shifted(this.clock.now(), wait), lastError };
    }
  }
}

function dueJobs(from: ReadFrom, now: string): Promise<{ id: string }[]> {
  return from.sql<{ id: string }>`
    SELECT "id" FROM "outbox_job"
    WHERE "finished_at" IS NULL AND "run_after" <= ${now} AND ("leased_until" IS NULL OR "leased_until" < ${now})
    ORDER BY "run_after", "id" LIMIT 1`;
}
