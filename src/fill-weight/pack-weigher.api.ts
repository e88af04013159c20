import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { AddPackWeigher } from './add-pack-weigher.js';
import { AddPackWeigherForm, WeigherWayForm, WithdrawPackWeigherForm } from './pack-weigher.form.js';
import { packWeighersOf } from './pack-weighers.js';
import { SetWeigherWay } from './set-weigher-way.js';
import { WithdrawPackWeigher } from './withdraw-pack-weigher.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const row = { id, code: 'W1', deviceCode: 'pack-weigher-1', lineCode: '1', stepMilligrams: 200, weightCount: 80_000 };

@ApiTags('fill weights')
@Controller('api/pack-weighers')
export class PackWeigherApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly addPackWeigher: AddPackWeigher,
    private readonly withdrawPackWeigher: WithdrawPackWeigher,
    private readonly setWeigherWay: SetWeigherWay,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'The pack weighers of the site, by code, with how many weights each sent' })
  @ApiOkResponse({ schema: { example: { items: [row], next: null } } })
  async list(@Acting() actor: Actor) {
    return { items: await packWeighersOf(this.reader, actor.siteId), next: null };
  }

  @Post()
  @May('set-up-plant')
  @ApiOperation({ summary: 'Set up a machine as the pack weigher of a line' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  add(@Asking() asked: Asked, @Body() form: AddPackWeigherForm): Promise<{ readonly id: string }> {
    return this.addPackWeigher.execute(asked, form);
  }

  @Post(':id/withdrawal')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Take a pack weigher off its line; what it sent stays' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  withdraw(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) weigherId: string,
    @Body() form: WithdrawPackWeigherForm,
  ): Promise<{ readonly id: string }> {
    return this.withdrawPackWeigher.execute(asked, weigherId, form);
  }

  @Post(':id/way')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Say whether a pack weigher may send by MQTT' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  way(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) weigherId: string,
    @Body() form: WeigherWayForm,
  ): Promise<{ readonly id: string }> {
    return this.setWeigherWay.execute(asked, weigherId, form);
  }
}
