import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import { hopperOfLine } from '../plant/plant-facts.js';
import { Clock } from '../platform/clock.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { currentPeriod, periodOf, type PeriodRow } from './hopper-period-rows.js';
import { levelOf, type HopperLevel } from './hopper-level.js';
import { isSurelyPossible, isSurelyTooFull, levelSince, type LastLook } from './level-estimate.js';
import { levelJobKind } from './level-job.js';
import { question, type LevelLook } from './level-look.question.js';
import { PointAtLevel } from './point-at-level.js';

/**
 * Looks at a hopper's level after what was recorded of it: closely (the whole period, mass by mass, beside the server)
 * where sums do not show already that nothing is wrong, or that what was wrong still is. What it remembers of the last look is only for that; after a start it looks anew.
 */
@Injectable()
export class LevelWatch implements OnModuleInit {
  private readonly lastLooks = new Map<string, LastLook>();
  /** Looks for pages bring no point in line, so they are kept apart from those that did. */
  private readonly pageLooks = new Map<string, LastLook>();

  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly heavy: HeavyReads,
    private readonly points: PointAtLevel,
    private readonly clock: Clock,
    private readonly jobs: JobRunner,
  ) {}

  onModuleInit(): void {
    this.jobs.handle('packs-counted', (payload) => this.packsCounted(payload as { readonly lineId: string }));
    this.jobs.handle(levelJobKind, (payload) => this.recorded((payload as { readonly periodId: string }).periodId));
  }

  private async packsCounted({ lineId }: { readonly lineId: string }): Promise<void> {
    const hopperId = await hopperOfLine(this.reader, lineId, this.clock.now());
    const period = hopperId === null ? null : await currentPeriod(this.reader, hopperId);
    if (period !== null) await this.lookWhereNeeded(period);
  }

  private async recorded(periodId: string): Promise<void> {
    await this.lookWhereNeeded(await periodOf(this.reader, periodId));
  }

  private async lookWhereNeeded(period: PeriodRow): Promise<void> {
    const last = this.lastLooks.get(period.hopperId);
    const isPlain = period.endedAt === null && last !== undefined;
    if (isPlain && (await isSurelyPossible(this.reader, period, { last, now: this.clock.now() }))) return;
    if (isPlain && (await isSurelyTooFull(this.reader, period, last))) return;
    await this.look(period.id);
  }

  /** What is inside a hopper now: by the last close look and what came since, where that can tell; else by a close look. */
  async levelNow(hopperId: string): Promise<HopperLevel> {
    const period = await currentPeriod(this.reader, hopperId);
    if (period === null) return levelOf(this.reader, hopperId);
    for (const last of [this.lastLooks.get(hopperId), this.pageLooks.get(hopperId)]) {
      const estimated = last === undefined ? null : await levelSince(this.reader, period, last);
      if (estimated !== null) return estimated;
    }
    const { level, looked } = lookOf(await this.heavy.ask(question, { periodId: period.id }));
    this.pageLooks.set(hopperId, looked);
    return level;
  }

  /** The close look: brings the open point of the period in line with its level. */
  async look(periodId: string): Promise<void> {
    const { period, hopperCode, level, looked } = lookOf(await this.heavy.report(question, { periodId }));
    if (period.endedAt === null) this.lastLooks.set(period.hopperId, looked);
    await this.points.bring({ ...period, hopperCode }, level);
  }
}

function lookOf(text: string): LevelLook {
  return JSON.parse(text) as LevelLook;
}
