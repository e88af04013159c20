import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Clock, shifted, type Instant } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { bringCheckPoints, pointsSaySo } from './bring-check-points.js';
import { plansOfSite } from './check-plans.js';
import { dueChecks, type DueCheck } from './due-checks.js';
import { overdueAt } from './due-state.js';
import { lookAtChecksJob } from './look-job.js';

/** Runs and changes of code or film make checks due without telling; so it looks at least so often. */
const longestWaitMilliseconds = 15 * 60_000;
const shortestWaitMilliseconds = 60_000;

/** Raises a point for the lead where a check is overdue, and clears it once that is over; comes again by itself. */
@Injectable()
export class LookAtChecks implements OnModuleInit {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly changes: RecordChange,
    private readonly clock: Clock,
    private readonly ids: Ids,
    private readonly jobs: JobRunner,
  ) {}

  onModuleInit(): void {
    this.jobs.handleAgain(lookAtChecksJob, (payload) => this.look((payload as { readonly siteId: string }).siteId));
  }

  /** Answers when to look again. Records nothing where the points say already what is so. */
  async look(siteId: string): Promise<Instant> {
    const now = this.clock.now();
    const plans = await plansOfSite(this.reader, siteId, now);
    const lineIds = [...new Set(plans.map((plan) => plan.lineId))];
    let next = shifted(now, longestWaitMilliseconds);
    for (const lineId of lineIds) {
      for (const due of await dueChecks(this.reader, lineId, now)) {
        if (!(await pointsSaySo(this.reader, due))) await this.bring(due);
        const at = due.dueAt === null ? next : overdueAt(due.dueAt, due.plan);
        if (at > now && at < next) next = at;
      }
    }
    const soonest = shifted(now, shortestWaitMilliseconds);
    return next > soonest ? next : soonest;
  }

  private async bring({ plan }: DueCheck): Promise<void> {
    const { siteId, planId } = plan;
    await this.changes.run(asTheHouse(siteId), {}, async (tx, change) => {
      const nextId = (): string => this.ids.next();
      const at = change.recordedAt;
      const { word, dueAt } = await bringCheckPoints(tx, { nextId, siteId, planId, personId: null, at });
      const subject = { kind: 'check-plan', id: planId };
      return { answer: null, entry: { action: 'look-at-line-checks', subject, after: { word, dueAt } } };
    });
  }
}

function asTheHouse(siteId: string): Asked {
  return { actor: { siteId, personId: null, deviceId: null, roles: [] }, route: 'HOUSE', key: null };
}
