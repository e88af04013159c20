import { Inject, Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { sealWeightsJob } from './kept/seal-job.js';
import { lookAtWeighingJob } from './look-job.js';

/** Weighers that an earlier release set up, which knew nothing of these jobs, are looked at from the first start on. */
@Injectable()
export class WeighingFromStart implements OnApplicationBootstrap {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly ids: Ids,
    private readonly jobs: JobRunner,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    const [weigher] = await this.reader.sql`SELECT "id" FROM "pack_weigher" WHERE "voided_by" IS NULL LIMIT 1`;
    if (weigher === undefined) return;
    for (const kind of [lookAtWeighingJob, sealWeightsJob]) {
      await this.jobs.leaveAgain({ id: this.ids.next(), kind, payload: {}, at: this.clock.now() });
    }
  }
}
