import { Controller, Get, Post, Inject, Param, ParseUUIDPipe } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../../journal/entry-draft.js';
import type { WeightSums } from '../../core/weight-blocks/weight-summary.js';
import { findRun } from '../../packing/packing-runs.js';
import { May, type Actor } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Acting, Asking } from '../../platform/web/request.js';
import type { Silence } from '../silence/silences.js';
import { IssueWeightReport, type WeightReportAnswer } from '../report/issue-weight-report.js';
import { RunSights, type RunSight } from './run-sights.js';
import type { SubgroupsOfRun } from './single-weights.js';
import { runWeightsExample } from './run-weights.examples.js';

@ApiTags('fill weights')
@Controller('api/runs')
export class RunWeightsApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly sights: RunSights,
    private readonly issueReport: IssueWeightReport,
  ) {}

  @Get(':id/weights')
  @May('read')
  @ApiOperation({
    summary:
      'The weights of a run: its verdict by the rules of each market, giveaway, histogram, hours, control chart, heads, what happened meanwhile, and the sums of each weigher. Law differs by country, and an inspector decides',
  })
  @ApiOkResponse({ schema: { example: runWeightsExample } })
  async ofRun(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string) {
    return asJson(await this.sights.of(await findRun(this.reader, actor.siteId, id)));
  }

  @Post(':id/weights/report')
  @May('weigh-packs')
  @ApiOperation({ summary: 'Issue a report of a run’s weights for an inspector; its PDF is /papers/{paperId}/file' })
  report(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string): Promise<WeightReportAnswer> {
    return this.issueReport.execute(asked, id);
  }
}

function asJson({ weights, single, heads, events, sale }: RunSight) {
  const { run, yardstick, weighers, weighed, verdicts, hours, ...counts } = weights;
  const { weighedPackCount, rejectedPackCount, unweighedPackCount, uncountedPackCount } = counts;
  const { verifiedPackCount, takenOutPackCount, silences } = counts;
  const { noHeadPackCount, zeroOrNoHeadPackCount } = single.byHead;
  return {
    ...{ runId: run.id, number: run.number, closedAt: run.closedAt, countedPackCount: run.packCount },
    ...{ weighedPackCount, rejectedPackCount, unweighedPackCount, uncountedPackCount, yardstick },
    ...{ verifiedPackCount, takenOutPackCount, silences: silences.map(silenceAsJson) },
    weighed: weighed === null ? null : { ...weighed, bins: weighed.bins.map(binAsJson) },
    ...{ sale, verdicts, hours, heads, noHeadPackCount, zeroOrNoHeadPackCount },
    ...{ events, unreadable: single.unreadable },
    charted: single.charted === null ? null : subgroupsAsJson(single.charted),
    weighers: weighers.map(({ weigherId, firstAt, lastAt, summary }) => ({
      ...{ weigherId, firstAt, lastAt },
      accepted: sumsAsJson(summary.accepted),
      rejected: sumsAsJson(summary.rejected),
    })),
  };
}

function silenceAsJson(silence: Silence) {
  const { weigherId, sinceAt, untilAt, countedPackCount, weighedPackCount, unverifiedPackCount } = silence;
  return { weigherId, sinceAt, untilAt, countedPackCount, weighedPackCount, unverifiedPackCount };
}

function subgroupsAsJson({ weigherId, everyMinutes, size, subgroups }: SubgroupsOfRun) {
  return {
    ...{ weigherId, everyMinutes, size },
    subgroups: subgroups.map(({ atCentiseconds, mean, standardDeviation }) => ({
      at: new Date(atCentiseconds * 10).toISOString(),
      meanMilligrams: mean,
      standardDeviationMilligrams: standardDeviation,
    })),
  };
}

function binAsJson({ from, until, count }: { readonly from: number; readonly until: number; readonly count: number }) {
  return { fromMilligrams: from, untilMilligrams: until, packCount: count };
}

/** A sum of squares may pass 2^53, so it is sent as text; the histogram is sent once, of all weighers. */
function sumsAsJson(sums: WeightSums) {
  return {
    packCount: sums.packCount,
    errorSumMilligrams: sums.errorSumMilligrams,
    errorSquareSum: String(sums.errorSquareSum),
    smallestMilligrams: sums.smallestMilligrams,
    largestMilligrams: sums.largestMilligrams,
    beyondT1Count: sums.beyondT1Count,
    beyondT2Count: sums.beyondT2Count,
  };
}
