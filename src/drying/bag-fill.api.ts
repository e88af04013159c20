import { Body, Controller, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { CloseBagForm, FillBagForm, StartBagForm } from './bag-fill.form.js';
import { CloseBag, type ClosedBag } from './close-bag.js';
import { FillBag } from './fill-bag.js';
import { StartBag, type StartedBag } from './start-bag.js';

const started = { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10', number: 'B0012344', sscc: '095201230000000011' };
const closed = { ...started, netGrams: 996_500, isDoubtful: false };

@ApiTags('bulk bags')
@Controller('api')
export class BagFillApi {
  constructor(
    private readonly startBag: StartBag,
    private readonly closeBag: CloseBag,
    private readonly fillBag: FillBag,
  ) {}

  @Post('bags')
  @May('fill-bags')
  @ApiOperation({ summary: 'A bag was filled: start, end and weights in one message' })
  @ApiCreatedResponse({ schema: { example: closed } })
  fill(@Asking() asked: Asked, @Body() form: FillBagForm): Promise<ClosedBag> {
    return this.fillBag.execute(asked, form);
  }

  @Post('bag-starts')
  @May('fill-bags')
  @ApiOperation({ summary: 'A bag hangs under the filler and gets its numbers' })
  @ApiCreatedResponse({ schema: { example: started } })
  start(@Asking() asked: Asked, @Body() form: StartBagForm): Promise<StartedBag> {
    return this.startBag.execute(asked, form);
  }

  @Post('bag-closes')
  @May('fill-bags')
  @ApiOperation({ summary: 'Filling ends: the bag is weighed and closed' })
  @ApiCreatedResponse({ schema: { example: closed } })
  close(@Asking() asked: Asked, @Body() form: CloseBagForm): Promise<ClosedBag> {
    return this.closeBag.execute(asked, form);
  }
}
