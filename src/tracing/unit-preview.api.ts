import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CorrectBag } from '../drying/correct-bag.js';
import { CorrectBagForm } from '../drying/bag.form.js';
import { CorrectWeighing } from '../drying/correct-weighing.js';
import { CorrectWeighingForm } from '../drying/weighing.form.js';
import type { Asked } from '../journal/entry-draft.js';
import { SwapPalletLabelsForm } from '../pallets/pallet-label.form.js';
import { SwapPalletLabels } from '../pallets/swap-pallet-labels.js';
import { May } from '../platform/actor.js';
import { Trying } from '../platform/web/request.js';
import { CorrectionRipple } from './correction-ripple.js';
import type { Ripple } from './ripple.js';
import { Preview } from './tip-preview.api.js';

@ApiTags('previews')
@Controller('api')
export class UnitPreviewApi {
  constructor(
    private readonly ripple: CorrectionRipple,
    private readonly correctWeighing: CorrectWeighing,
    private readonly correctBag: CorrectBag,
    private readonly swapLabels: SwapPalletLabels,
  ) {}

  @Post('bag-weighings/:id/correction/preview')
  @May('correct')
  @Preview('the correction of a bag’s weighing')
  weighing(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectWeighingForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctWeighing.execute(trying, id, form));
  }

  @Post('bag-corrections/preview')
  @May('correct')
  @Preview('the correction of a bag that does not exist')
  bag(@Trying() asked: Asked, @Body() form: CorrectBagForm): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctBag.execute(trying, form));
  }

  @Post('pallet-label-swaps/preview')
  @May('correct')
  @Preview('exchanging what is recorded under two labels')
  swap(@Trying() asked: Asked, @Body() form: SwapPalletLabelsForm): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.swapLabels.execute(trying, form));
  }
}
