import { Injectable, Logger, type BeforeApplicationShutdown } from '@nestjs/common';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { RecordChange } from './record-change.js';

const dayMilliseconds = 86_400_000;

/** How long used keys and finished jobs are kept (`docs/retention.md`): longer than any queue on a device lives. */
export const daysKept = 30;

/** Once a day drops what is not a fact and has had its time: used keys and finished jobs. */
@Injectable()
export class Housekeeping implements BeforeApplicationShutdown {
  private readonly log = new Logger(Housekeeping.name);
  private timer: NodeJS.Timeout | null = null;

  constructor(
    private readonly changes: RecordChange,
    private readonly jobs: JobRunner,
  ) {}

  start(): void {
    this.timer = setInterval(() => {
      this.tidy().catch((error: unknown) => {
        this.log.error(error);
      });
    }, dayMilliseconds);
    this.timer.unref();
  }

  async tidy(): Promise<void> {
    await this.changes.forgetKeys(daysKept);
    await this.jobs.forgetFinished(daysKept);
  }

  beforeApplicationShutdown(): void {
    if (this.timer !== null) clearInterval(this.timer);
  }
}
