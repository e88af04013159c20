import { Inject, Injectable } from '@nestjs/common';
import type { RunRow } from '../../packing/packing-run-rows.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { saleOfFormat, type SaleOfFormat } from '../format-sales/format-sales.js';
import type { ChartEvent } from '../means-picture.js';
import { packWeighersNamed, type PackWeigherRow } from '../pack-weighers.js';
import { summariesOfRun } from '../kept/weight-questions.js';
import type { UnreadableWeights } from '../kept/kept-weights.js';
import { issuedReportsOf, type IssuedReport } from '../report/issued-reports.js';
import { compareHeads, type HeadCompared } from './compared-heads.js';
import { eventsOfRun } from './run-events.js';
import { readRunWeights, type RunWeights } from './run-weights.js';
import type { SingleWeights } from './single-weights.js';
import { question } from './single-weights.question.js';

/** All that is seen of a run's fill weights: what their sums say, what single weights say, and what happened meanwhile. */
export interface RunSight {
  readonly weights: RunWeights;
  readonly single: SingleWeights;
  readonly heads: readonly HeadCompared[];
  readonly events: readonly ChartEvent[];
  readonly packWeighers: readonly PackWeigherRow[];
  readonly reports: readonly IssuedReport[];
  /** How the format was sold when the run started; null: nobody said. */
  readonly sale: SaleOfFormat | null;
}

/** Reads what is seen of a run's weights; single weights are decoded beside the server. */
@Injectable()
export class RunSights {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  async of(run: RunRow): Promise<RunSight> {
    const weights = await readRunWeights(this.reader, run);
    const single = await this.singleWeights(weights);
    const untilAt = run.closedAt ?? this.clock.now();
    const ids = weights.weighers.map(({ weigherId }) => weigherId);
    const packWeighers = await packWeighersNamed(this.reader, ids);
    return {
      ...{ weights, single, packWeighers, reports: await issuedReportsOf(this.reader, run.id) },
      heads: compareHeads(
        single.byHead.heads,
        Math.max(0, ...packWeighers.map(({ stepMilligrams }) => stepMilligrams)),
      ),
      sale: await saleOfFormat(this.reader, run.formatId, run.startedAt),
      events: await eventsOfRun(this.reader, { run, untilAt }, single.tareChanges),
    };
  }

  /** The weights of a run that were dropped or are damaged. */
  async unreadableOf(runId: string): Promise<readonly UnreadableWeights[]> {
    const [first] = await summariesOfRun(this.reader, runId);
    if (first === undefined) return [];
    const asked = { runId, yardstick: first.yardstick };
    return (JSON.parse(await this.heavy.ask(question, asked)) as SingleWeights).unreadable;
  }

  private async singleWeights({ run, yardstick, weighed, weighers }: RunWeights): Promise<SingleWeights> {
    const byHead = { heads: [], noHeadPackCount: 0, zeroOrNoHeadPackCount: 0 };
    const nothing = { charted: null, byHead, tareChanges: [], unreadable: [] };
    if (weighed === null && weighers.length === 0) return nothing;
    return JSON.parse(await this.heavy.ask(question, { runId: run.id, yardstick })) as SingleWeights;
  }
}
