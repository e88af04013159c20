import { Body, Controller, Get, Inject, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { SetSsccsAside, type SetAsideAnswer } from './set-ssccs-aside.js';
import { SetAsideForm } from './sscc-block.form.js';
import { unusedOfDevice } from './sscc-blocks.js';

const ssccs = ['095201230000000141', '095201230000000158'];

@ApiTags('pallets')
@Controller('api/sscc-blocks')
export class SsccBlockApi {
  constructor(
    private readonly setSsccsAside: SetSsccsAside,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Post()
  @May('build-pallets')
  @ApiOperation({ summary: 'Set pallet numbers aside for this device, for when the network is away' })
  @ApiCreatedResponse({ schema: { example: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10', ssccs } } })
  take(@Asking() asked: Asked, @Body() form: SetAsideForm): Promise<SetAsideAnswer> {
    return this.setSsccsAside.execute(asked, form);
  }

  @Get('unused')
  @May('read')
  @ApiOperation({ summary: 'The numbers set aside for this device that no pallet bears yet' })
  @ApiOkResponse({ schema: { example: { ssccs } } })
  async unused(@Acting() { siteId, deviceId }: Actor): Promise<{ readonly ssccs: readonly string[] }> {
    return { ssccs: deviceId === null ? [] : await unusedOfDevice(this.reader, siteId, deviceId) };
  }
}
