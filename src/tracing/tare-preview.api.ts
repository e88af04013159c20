import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CorrectTare } from '../fill-weight/kept/correct-tare.js';
import { CorrectTareForm, WithdrawTareCorrectionForm } from '../fill-weight/kept/weights.form.js';
import { WithdrawTareCorrection } from '../fill-weight/kept/withdraw-tare-correction.js';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Trying } from '../platform/web/request.js';
import { CorrectionRipple } from './correction-ripple.js';
import type { Ripple } from './ripple.js';
import { Preview } from './tip-preview.api.js';

@ApiTags('previews')
@Controller('api/tare-corrections')
export class TarePreviewApi {
  constructor(
    private readonly ripple: CorrectionRipple,
    private readonly correctTare: CorrectTare,
    private readonly withdrawTareCorrection: WithdrawTareCorrection,
  ) {}

  @Post('preview')
  @May('set-up-plant')
  @Preview('the correction of a tare')
  correction(@Trying() asked: Asked, @Body() form: CorrectTareForm): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctTare.execute(trying, form));
  }

  @Post(':id/withdrawal/preview')
  @May('set-up-plant')
  @Preview('the withdrawal of a tare correction')
  withdrawal(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: WithdrawTareCorrectionForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.withdrawTareCorrection.execute(trying, id, form));
  }
}
