import {
  Inject,
  Injectable,
  Logger,
  type BeforeApplicationShutdown,
  type OnApplicationBootstrap,
} from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { Clock, shifted, type Instant } from '../../platform/clock.js';
import { CONFIG, type Config } from '../../platform/config.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { DropWeights } from './drop-weights.js';
import { mayGoBefore } from './kept-for.js';

const hourMilliseconds = 3_600_000;
/** So many blocks go at once, so that nobody waits for it. */
const blocksAtOnce = 200;

/** Every hour drops single weights whose time is up, where the settings ask for it; else it drops nothing, ever. */
@Injectable()
export class DropOldWeights implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private readonly log = new Logger(DropOldWeights.name);
  private timer: NodeJS.Timeout | null = null;
  private working: Promise<void> = Promise.resolve();

  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    @Inject(CONFIG) private readonly config: Config,
    private readonly clock: Clock,
    private readonly dropWeights: DropWeights,
  ) {}

  onApplicationBootstrap(): void {
    if (!this.config.dropsWeights) return;
    this.timer = setInterval(() => {
      this.working = this.look().catch((error: unknown) => {
        this.log.error(error);
      });
    }, hourMilliseconds);
    this.timer.unref();
  }

  async beforeApplicationShutdown(): Promise<void> {
    if (this.timer !== null) clearInterval(this.timer);
    await this.working;
  }

  /** Drops what may go. */
  async look(): Promise<void> {
    if (this.config.dropsWeights) await this.dropAll(mayGoBefore(this.clock.now(), this.config.weightMonths));
  }

  private async dropAll(before: Instant): Promise<void> {
    for (const siteId of await this.sitesWithWeights(before)) {
      for (let step = await this.nextStep(siteId, before); step !== null; step = await this.nextStep(siteId, before)) {
        await this.dropWeights.execute(asTheHouse(siteId), { before: step, reason: null });
      }
    }
  }

  private async sitesWithWeights(before: Instant): Promise<string[]> {
    const rows = await this.reader.sql<{ siteId: string }>`
      SELECT DISTINCT r."site_id" AS "siteId" FROM "weight_block" b JOIN "packing_run" r ON r."id" = b."run_id"
      WHERE b."weights" IS NOT NULL AND b."last_at" < ${before}`;
    return rows.map(({ siteId }) => siteId);
  }

  /** The end of the oldest blocks that still have their bytes, so many at once; null where none may go. */
  private async nextStep(siteId: string, before: Instant): Promise<Instant | null> {
    const rows = await this.reader.sql<{ lastAt: Instant }>`
      SELECT b."last_at" AS "lastAt" FROM "weight_block" b JOIN "packing_run" r ON r."id" = b."run_id"
      WHERE b."weights" IS NOT NULL AND b."last_at" < ${before} AND r."site_id" = ${siteId}
      ORDER BY b."last_at" LIMIT ${blocksAtOnce}`;
    const last = rows.at(-1);
    return last === undefined ? null : shifted(last.lastAt, 1);
  }
}

function asTheHouse(siteId: string): Asked {
  return { actor: { siteId, personId: null, deviceId: null, roles: [] }, route: 'HOUSE', key: null };
}
