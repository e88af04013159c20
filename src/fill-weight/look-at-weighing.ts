import { Injectable, type OnModuleInit } from '@nestjs/common';
import { Clock, shifted, type Instant } from '../platform/clock.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { WatchHandSamples } from './hand-plan/watch-hand-samples.js';
import { lookAtWeighingJob } from './look-job.js';
import { WatchSilences } from './silence/watch-silences.js';

/** Counts and weights come without telling, so it looks every minute; where all is as it was that costs a few rows. */
const waitMilliseconds = 60_000;

/** Looks for silent weighers and hand samples that are overdue; comes again by itself. */
@Injectable()
export class LookAtWeighing implements OnModuleInit {
  constructor(
    private readonly silences: WatchSilences,
    private readonly handSamples: WatchHandSamples,
    private readonly clock: Clock,
    private readonly jobs: JobRunner,
  ) {}

  onModuleInit(): void {
    this.jobs.handleAgain(lookAtWeighingJob, () => this.look());
  }

  /** Answers when to look again. */
  private async look(): Promise<Instant> {
    await this.silences.look();
    await this.handSamples.look();
    return shifted(this.clock.now(), waitMilliseconds);
  }
}
