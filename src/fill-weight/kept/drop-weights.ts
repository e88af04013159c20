import { Inject, Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { Clock, type Instant } from '../../platform/clock.js';
import { CONFIG, type Config } from '../../platform/config.js';
import { toWhole } from '../../platform/database/stored-values.js';
import { onlyRow } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';
import { mayGoBefore } from './kept-for.js';

/** What is asked for. The house itself gives no reason but the time that is up. */
export interface WeightsToDrop {
  readonly before: Instant;
  readonly reason: string | null;
}

export interface DropWeightsAnswer {
  readonly before: Instant;
  readonly blockCount: number;
  readonly weightCount: number;
}

/**
 * Single weights whose time is up go: the bytes of blocks that end before an instant. Their sums, the histograms and the
 * packs beyond T2 stay. Weights not yet sealed stay too.
 * Refusals: `weights-too-young` within the time for which they are kept.
 */
@Injectable()
export class DropWeights {
  constructor(
    private readonly changes: RecordChange,
    private readonly clock: Clock,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  execute(asked: Asked, { before, reason }: WeightsToDrop): Promise<DropWeightsAnswer> {
    return this.changes.run(asked, { before, reason }, async (tx) => {
      const { siteId } = asked.actor;
      const youngest = mayGoBefore(this.clock.now(), this.config.weightMonths);
      if (before > youngest) throw new Refusal('weights-too-young', { before: youngest });
      const gone = onlyRow(
        await tx.sql<{ blockCount: number; weightCount: number }>`
          SELECT COUNT(*) AS "blockCount", COALESCE(SUM("weight_count"), 0) AS "weightCount" FROM "weight_block"
          WHERE "last_at" < ${before} AND "weights" IS NOT NULL
            AND "run_id" IN (SELECT "id" FROM "packing_run" WHERE "site_id" = ${siteId})`,
      );
      await tx.sql`
        UPDATE "weight_block" SET "weights" = NULL WHERE "last_at" < ${before} AND "weights" IS NOT NULL
          AND "run_id" IN (SELECT "id" FROM "packing_run" WHERE "site_id" = ${siteId})`;
      const counts = {
        blockCount: toWhole(gone?.blockCount ?? 0),
        weightCount: toWhole(gone?.weightCount ?? 0),
      };
      return {
        answer: { before, ...counts },
        entry: { action: 'drop-weights', subject: { kind: 'site', id: siteId }, after: { before, ...counts }, reason },
      };
    });
  }
}
