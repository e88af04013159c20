import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import { meanNetsOf } from '../fill-weight/mean-nets.js';
import { hopperOfLine } from '../plant/plant-facts.js';
import { Clock } from '../platform/clock.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { currentPeriod } from './hopper-period-rows.js';
import { readHopperPeriod, type HopperPeriodFacts } from './hopper-periods.js';
import { levelOfPeriod, type HopperLevel } from './hopper-level.js';
import { levelJobKind } from './level-job.js';
import { PointAtLevel } from './point-at-level.js';

/** What the last look at a hopper found, as far as it says when to look again. */
interface LastLook {
  readonly periodId: string;
  /** More than this must leave before the level can be below zero. */
  readonly upperGrams: number;
  readonly hasFindings: boolean;
  /** How far each run was counted, and what its packs hold at least. */
  readonly runs: ReadonlyMap<string, { readonly packCount: number; readonly lowerMilligrams: number }>;
}

/**
 * Looks at a hopper's level after what was recorded of it. Lines count every minute and a period has thousands of
 * counts, so a count leads to a close look only once so much was packed that the level can be below zero; tips and all
 * else that is recorded at the hopper always do.
 */
@Injectable()
export class LevelWatch implements OnModuleInit {
  private readonly lastLooks = new Map<string, LastLook>();

  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly heavy: HeavyReads,
    private readonly points: PointAtLevel,
    private readonly clock: Clock,
    private readonly jobs: JobRunner,
  ) {}

  onModuleInit(): void {
    this.jobs.handle('packs-counted', (payload) => this.packsCounted(payload as { readonly lineId: string }));
    this.jobs.handle(levelJobKind, (payload) => this.look((payload as { readonly periodId: string }).periodId));
  }

  async packsCounted({ lineId }: { readonly lineId: string }): Promise<void> {
    const hopperId = await hopperOfLine(this.reader, lineId, this.clock.now());
    const period = hopperId === null ? null : await currentPeriod(this.reader, hopperId);
    if (period === null) return;
    const last = this.lastLooks.get(period.hopperId);
    const isPlain = last?.periodId === period.id && !last.hasFindings;
    if (isPlain && (await this.isSurelyAboveZero(last, period.hopperId))) return;
    await this.look(period.id);
  }

  /** Does what the job does: looks, and brings the open point in line. */
  async look(periodId: string): Promise<void> {
    const { facts, level } = await this.heavy.snapshot(async (from) => {
      const read = await readHopperPeriod(from, periodId);
      return { facts: read, level: levelOfPeriod(read) };
    });
    if (facts.period.endedAt === null) this.lastLooks.set(facts.period.hopperId, lastLook(facts, level));
    await this.points.bring(facts, level);
  }

  private async isSurelyAboveZero(last: LastLook, hopperId: string): Promise<boolean> {
    const rows = await this.reader.sql<{ runId: string; packCount: number }>`
      SELECT s."run_id" AS "runId", s."pack_count" AS "packCount"
      FROM "packing_run_state" s JOIN "packing_run" r ON r."id" = s."run_id"
      WHERE s."last_counted_at" >= (SELECT p."started_at" FROM "hopper_period" p WHERE p."id" = ${last.periodId})
        AND r."line_id" IN (SELECT l."line_id" FROM "hopper_line" l WHERE l."hopper_id" = ${hopperId})`;
    const nets = await meanNetsOf(
      this.reader,
      rows.map(({ runId }) => runId),
    );
    let packedGrams = 0;
    for (const { runId, packCount } of rows) {
      const known = last.runs.get(runId);
      // A new run, a count that was taken back, packs weighed anew: the level is another one.
      if (known === undefined || packCount < known.packCount) return false;
      if (nets.get(runId)?.lowerMilligrams !== known.lowerMilligrams) return false;
      packedGrams += ((packCount - known.packCount) * known.lowerMilligrams) / 1000;
    }
    return packedGrams <= last.upperGrams;
  }
}

function lastLook(facts: HopperPeriodFacts, level: HopperLevel): LastLook {
  const runs = new Map<string, { packCount: number; lowerMilligrams: number }>();
  for (const { id, meanNet } of facts.runs.values()) {
    runs.set(id, { packCount: 0, lowerMilligrams: meanNet.lowerMilligrams });
  }
  for (const { runId, toCount } of facts.packs) {
    const run = runs.get(runId);
    if (run !== undefined) run.packCount = Math.max(run.packCount, toCount);
  }
  return { periodId: facts.period.id, upperGrams: level.upperGrams, hasFindings: level.findings.length > 0, runs };
}
