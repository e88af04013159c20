import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { WeightSums } from '../../core/weight-blocks/weight-summary.js';
import type { Asked } from '../../journal/entry-draft.js';
import { runOf } from '../../packing/packing-runs.js';
import { May, type Actor } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import { Acting, Asking } from '../../platform/web/request.js';
import { CorrectTare, type TareCorrectionAnswer } from './correct-tare.js';
import { DropWeights, type DropWeightsAnswer } from './drop-weights.js';
import { summariesOfRun } from './weight-questions.js';
import { CorrectTareForm, DropWeightsForm, WithdrawTareCorrectionForm } from './weights.form.js';
import { WithdrawTareCorrection } from './withdraw-tare-correction.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const sums = {
  packCount: 18_240,
  errorSumMilligrams: 54_720_000,
  errorSquareSum: '620160000000',
  smallestMilligrams: 983_400,
  largestMilligrams: 1_021_200,
  beyondT1Count: 2,
  beyondT2Count: 0,
};

@ApiTags('fill weights')
@Controller('api')
export class KeptWeightsApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly correctTare: CorrectTare,
    private readonly withdrawTareCorrection: WithdrawTareCorrection,
    private readonly dropWeights: DropWeights,
  ) {}

  @Get('packing-runs/:id/weights')
  @May('read')
  @ApiOperation({ summary: 'The weights of a run, summed up by weigher: accepted packs apart from rejected ones' })
  @ApiOkResponse({ schema: { example: { items: [{ weigherId: id, accepted: sums, rejected: sums }], next: null } } })
  async ofRun(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) runId: string) {
    const run = await runOf(this.reader, runId);
    if (run.siteId !== actor.siteId) throw new NotFound('packing-run', runId);
    const found = await summariesOfRun(this.reader, runId);
    const items = found.map(({ summary, ...of }) => ({
      ...of,
      accepted: asJson(summary.accepted),
      rejected: asJson(summary.rejected),
    }));
    return { items, next: null };
  }

  @Post('tare-corrections')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Add so much to the net of some packs of a run: their tare was wrong' })
  @ApiCreatedResponse({ schema: { example: { id, packCount: 8000 } } })
  correct(@Asking() asked: Asked, @Body() form: CorrectTareForm): Promise<TareCorrectionAnswer> {
    return this.correctTare.execute(asked, form);
  }

  @Post('tare-corrections/:id/withdrawal')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Withdraw a tare correction that was wrong itself' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  withdraw(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) correctionId: string,
    @Body() form: WithdrawTareCorrectionForm,
  ): Promise<{ readonly id: string }> {
    return this.withdrawTareCorrection.execute(asked, correctionId, form);
  }

  @Post('weights/dropping')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Drop single weights whose time is up; sums and packs beyond T2 stay' })
  @ApiCreatedResponse({
    schema: { example: { before: '2024-11-30T00:00:00.000Z', blockCount: 4883, weightCount: 2e7 } },
  })
  drop(@Asking() asked: Asked, @Body() form: DropWeightsForm): Promise<DropWeightsAnswer> {
    return this.dropWeights.execute(asked, form);
  }
}

/** A sum of squares may pass 2^53, so it is sent as text; the histogram is not sent. */
function asJson(sums: WeightSums) {
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
