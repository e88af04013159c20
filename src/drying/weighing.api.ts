import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import type { ClosedBag } from './close-bag.js';
import { CorrectWeighing, type CorrectedWeighing } from './correct-weighing.js';
import { ReweighBag } from './reweigh-bag.js';
import { CorrectWeighingForm, ReweighBagForm } from './weighing.form.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';

@ApiTags('bulk bags')
@Controller('api/bag-weighings')
export class WeighingApi {
  constructor(
    private readonly reweighBag: ReweighBag,
    private readonly correctWeighing: CorrectWeighing,
  ) {}

  @Post()
  @May('fill-bags')
  @ApiOperation({ summary: 'A full bag is weighed again' })
  @ApiCreatedResponse({
    schema: { example: { id, number: 'B0012344', sscc: '095201230000000011', netGrams: 996_500, isDoubtful: false } },
  })
  reweigh(@Asking() asked: Asked, @Body() form: ReweighBagForm): Promise<ClosedBag> {
    return this.reweighBag.execute(asked, form);
  }

  @Post(':id/correction')
  @May('correct')
  @ApiOperation({ summary: 'A weighing did not take place, or something in it was wrong' })
  @ApiCreatedResponse({
    schema: { example: { bagId: id, weighingId: id, netGrams: 996_000, status: 'full', remainingGrams: 996_000 } },
  })
  correct(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) weighingId: string,
    @Body() form: CorrectWeighingForm,
  ): Promise<CorrectedWeighing> {
    return this.correctWeighing.execute(asked, weighingId, form);
  }
}
