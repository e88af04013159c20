import { Body, Controller, Post } from '@nestjs/common';
import { ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { SwapPalletLabelsForm } from './pallet-label.form.js';
import { SwapPalletLabels, type SwapAnswer } from './swap-pallet-labels.js';

@ApiTags('pallets')
@Controller('api/pallet-label-swaps')
export class LabelSwapApi {
  constructor(private readonly swapLabels: SwapPalletLabels) {}

  @Post()
  @May('correct')
  @ApiOperation({ summary: 'Two labels stick on each other’s pallet: what is recorded under them is exchanged' })
  swap(@Asking() asked: Asked, @Body() form: SwapPalletLabelsForm): Promise<SwapAnswer> {
    return this.swapLabels.execute(asked, form);
  }
}
