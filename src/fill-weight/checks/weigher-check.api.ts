import { Body, Controller, Inject, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';
import { Trying } from '../../platform/web/request.js';
import { packWeigherOfDevice } from '../pack-weighers.js';
import { ReceiveWeigherCheck, type WeigherCheckAnswer } from './receive-weigher-check.js';
import { WeigherCheckForm } from './weigher-check.form.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const example = {
  ...{ checkId: id, planId: id, station: 'Pack weigher 1', sequence: 812, passed: true, action: null },
  results: [{ code: 'p1', passed: true, readingMilligrams: 2_000_400 }],
  isRepeated: false,
};

@ApiTags('fill weights')
@Controller('api/weigher-checks')
export class WeigherCheckApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly receiveCheck: ReceiveWeigherCheck,
  ) {}

  @Post()
  @May('send-fill-weights')
  @ApiOperation({
    summary:
      'A pack weigher sends the result of a check that it made with known test packs: recorded as a line check, passed or failed by the plan’s own limits; where it failed, what was done at once may be said with it. What was sent before under the same sequence counts once, so it takes no key',
  })
  @ApiCreatedResponse({ schema: { example } })
  async send(@Trying() asked: Asked, @Body() form: WeigherCheckForm): Promise<WeigherCheckAnswer> {
    const weigher = await packWeigherOfDevice(this.reader, asked.actor.deviceId ?? '');
    if (weigher === null) throw new Refusal('machine-weighs-nothing');
    return this.receiveCheck.execute(asked, weigher, form);
  }
}
