import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { scaleStandingAt } from '../plant/plant-facts.js';
import type { ScaleStanding } from '../plant/plant-rows.js';
import { lookAtScaleJob, type LookAtScale } from '../plant/scale-job.js';
import { Clock, type Instant } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { openPointIdOf } from './open-points.js';
import { clearPoints, raisePoint } from './raise-point.js';

/** Raises a point for quality where a scale is overdue or has failed, and clears it once that is over. */
@Injectable()
export class LookAtScales implements OnModuleInit {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly changes: RecordChange,
    private readonly clock: Clock,
    private readonly ids: Ids,
    private readonly jobs: JobRunner,
  ) {}

  onModuleInit(): void {
    this.jobs.handle(lookAtScaleJob, (payload) => this.look(payload as LookAtScale));
  }

  /** Records nothing where the points say already what is so: a job may come twice. */
  async look({ siteId, scaleId }: LookAtScale): Promise<void> {
    const seen = await scaleStandingAt(this.reader, scaleId, this.clock.now());
    if (await saysSo(this.reader, seen)) return;
    await this.changes.run(asTheHouse(siteId), {}, async (tx, change) => {
      const standing = await scaleStandingAt(tx, scaleId, change.recordedAt);
      await this.bringPoints(tx, standing, change.recordedAt);
      const { isOverdue, hasFailed } = standing;
      const subject = { kind: 'scale', id: scaleId };
      return { answer: null, entry: { action: 'look-at-scale', subject, after: { isOverdue, hasFailed } } };
    });
  }

  private async bringPoints(tx: Tx, standing: ScaleStanding, at: Instant): Promise<void> {
    const { siteId, id, code } = standing.scale;
    const subject = { kind: 'scale', id };
    for (const { cause, isSo } of causesOf(standing)) {
      if (isSo) {
        const facts = { scale: code };
        await raisePoint(tx, { id: this.ids.next(), siteId, cause, facts, subject, role: 'quality-officer', at });
      } else {
        await clearPoints(tx, { nextId: () => this.ids.next(), siteId, cause, subject, personId: null, at });
      }
    }
  }
}

function causesOf(standing: ScaleStanding): readonly { readonly cause: string; readonly isSo: boolean }[] {
  return [
    { cause: 'scale-check-overdue', isSo: standing.isOverdue },
    { cause: 'scale-check-failed', isSo: standing.hasFailed },
  ];
}

async function saysSo(from: ReadFrom, standing: ScaleStanding): Promise<boolean> {
  const { siteId, id } = standing.scale;
  for (const { cause, isSo } of causesOf(standing)) {
    const open = await openPointIdOf(from, { siteId, cause, subject: { kind: 'scale', id } });
    if ((open !== null) !== isSo) return false;
  }
  return true;
}

function asTheHouse(siteId: string): Asked {
  return { actor: { siteId, personId: null, deviceId: null, roles: [] }, route: 'HOUSE', key: null };
}
