import { Controller, Get } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { May, type Actor } from '../../platform/actor.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { Acting } from '../../platform/web/request.js';
import { bagsInStore, gradesOfLines, type BagInStore, type LineGrades } from './bags-in-store.js';

const items = [{ number: 'B0012344', sscc: '095201230000000141', gradeCode: 'WS2', state: 'released' }];
const lines = [{ id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10', grades: ['WS2'] }];

@ApiTags('drying')
@Controller('api/line-bags')
export class LineBagsApi {
  constructor(private readonly heavy: HeavyReads) {}

  @Get()
  @May('read')
  @ApiOperation({
    summary: 'The bags in store and what the lines take, for a device to keep while the network is away',
  })
  @ApiOkResponse({ schema: { example: { items, lines } } })
  list(
    @Acting() { siteId }: Actor,
  ): Promise<{ readonly items: readonly BagInStore[]; readonly lines: readonly LineGrades[] }> {
    return this.heavy.snapshot(async (from) => ({
      items: await bagsInStore(from, siteId),
      lines: await gradesOfLines(from, siteId),
    }));
  }
}
