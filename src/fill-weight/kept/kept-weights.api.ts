import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Asking } from '../../platform/web/request.js';
import { CorrectTare, type TareCorrectionAnswer } from './correct-tare.js';
import { DropWeights, type DropWeightsAnswer } from './drop-weights.js';
import { CorrectTareForm, DropWeightsForm, WithdrawTareCorrectionForm } from './weights.form.js';
import { WithdrawTareCorrection } from './withdraw-tare-correction.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';

@ApiTags('fill weights')
@Controller('api')
export class KeptWeightsApi {
  constructor(
    private readonly correctTare: CorrectTare,
    private readonly withdrawTareCorrection: WithdrawTareCorrection,
    private readonly dropWeights: DropWeights,
  ) {}

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
