import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Put } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { AddBagType } from './add-bag-type.js';
import { BagTypeForm } from './bag-type.form.js';
import { bagTypesOf, type BagTypeRow } from './bag-types.js';
import { ChangeBagType } from './change-bag-type.js';
import { SetUsualNetForm } from './grade.form.js';
import { SetUsualNet } from './set-usual-net.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const type = { code: 'FOURLOOP', name: 'Four loops, with liner', usualTareGrams: 2_300, safeLoadGrams: 1_250_000 };

/** What is usual of bags: tare and safe load by type, net by grade. */
@ApiTags('plant')
@Controller('api/plant')
export class BagTypeApi {
  constructor(
    private readonly addBagType: AddBagType,
    private readonly changeBagType: ChangeBagType,
    private readonly setUsualNet: SetUsualNet,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get('bag-types')
  @May('read')
  @ApiOperation({ summary: 'The types of bulk bags that the site fills' })
  @ApiOkResponse({ schema: { example: { items: [{ id, ...type, leastTareGrams: 2_100, mostTareGrams: 2_500 }] } } })
  async list(@Acting() actor: Actor): Promise<{ readonly items: readonly BagTypeRow[] }> {
    return { items: await bagTypesOf(this.reader, actor.siteId) };
  }

  @Post('bag-types')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Set up a type of bulk bag' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  add(@Asking() asked: Asked, @Body() form: BagTypeForm): Promise<{ readonly id: string }> {
    return this.addBagType.execute(asked, form);
  }

  @Put('bag-types/:id')
  @May('set-up-plant')
  @ApiOperation({ summary: 'What is known of a type of bulk bag is otherwise from now on' })
  @ApiOkResponse({ schema: { example: { id } } })
  change(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) bagTypeId: string,
    @Body() form: BagTypeForm,
  ): Promise<{ readonly id: string }> {
    return this.changeBagType.execute(asked, bagTypeId, form);
  }

  @Post('usual-nets')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Between what net weights a full bag of a grade usually is' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  usualNet(@Asking() asked: Asked, @Body() form: SetUsualNetForm): Promise<{ readonly id: string }> {
    return this.setUsualNet.execute(asked, form);
  }
}
