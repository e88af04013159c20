import { Controller, Get, Inject, Param, ParseUUIDPipe } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { lotPage } from './lot.page.js';
import { rangesOfLot, runOf } from './packing-runs.js';
import { readLotOfSite } from './run-lists.js';

@ApiExcludeController()
@Controller('lots')
export class LotController {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const lot = await readLotOfSite(this.reader, viewer.actor.siteId, id);
    const ranges = await rangesOfLot(this.reader, lot.id);
    const numbers = new Map<string, string>();
    for (const { runId } of ranges) {
      if (!numbers.has(runId)) numbers.set(runId, (await runOf(this.reader, runId)).number);
    }
    const numbered = ranges.map((range) => ({ ...range, runNumber: numbers.get(range.runId) ?? '' }));
    return lotPage({ viewer, lot, ranges: numbered });
  }
}
