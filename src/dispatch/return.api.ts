import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { DecideReturn } from './decide-return.js';
import { DecideReturnForm, TakeBackForm } from './return.form.js';
import { waitingReturns, type ReturnedUnitRow } from './returns.js';
import { TakeBack, type TakeBackAnswer } from './take-back.js';

/** What comes back from customers. */
@ApiTags('deliveries')
@Controller('api')
export class ReturnApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly takeBack: TakeBack,
    private readonly decideReturn: DecideReturn,
  ) {}

  @Post('deliveries/:id/returns')
  @May('keep-deliveries')
  @ApiOperation({
    summary: 'Take back pallets, whole bags or loose packs of a delivery; they stand apart until decided',
  })
  @ApiCreatedResponse({ schema: { example: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10', unitIds: [] } } })
  back(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: TakeBackForm,
  ): Promise<TakeBackAnswer> {
    return this.takeBack.execute(asked, id, form);
  }

  @Get('returns')
  @May('read')
  @ApiOperation({ summary: 'What came back and waits for quality’s decision, the oldest first' })
  async waiting(@Acting() actor: Actor): Promise<{ readonly items: readonly ReturnedUnitRow[] }> {
    return { items: await waitingReturns(this.reader, actor.siteId) };
  }

  @Post('returned-units/:id/decision')
  @May('decide')
  @ApiOperation({ summary: 'Decide about a unit that came back: into the stock, or destroyed' })
  decide(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: DecideReturnForm,
  ): Promise<{ readonly id: string }> {
    return this.decideReturn.execute(asked, id, form);
  }
}
