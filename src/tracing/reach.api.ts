import { Controller, Get, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { May, type Actor } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { Acting } from '../platform/web/request.js';
import { readBagReach, type BagReach } from './bag-reach.js';
import { daysOf, readPlantReach, type PlantReach } from './plant-reach.js';
import { PlantReachQuery } from './reach.form.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const sum = { totalGrams: 2_520_000_000, meanGrams: 21_000_000, worstGrams: 48_000_000 };
const plantExample = {
  ...{ fromOn: '2026-02-11', untilOn: '2026-03-12', bagCount: 120, asIs: sum },
  withEmpties: { ...sum, totalGrams: 1_260_000_000, meanGrams: 10_500_000, worstGrams: 22_000_000, emptyCount: 58 },
  ...{ shrinkPercent: 50, worst: [{ bagId: id, number: 'B0012344', grams: 48_000_000 }] },
};
const bagExample = {
  ...{ bagId: id, number: 'B0012344', possible: { packCount: 9_600, grams: 19_219_200 } },
  ...{ lots: [{ lotId: id, code: 'L6071A1' }], wholeLots: { packCount: 12_000, grams: 24_024_000 } },
  ...{ palletCount: 20, onVehicleCount: 0, awayCount: 12, customers: [] },
};

@ApiTags('reach')
@Controller('api')
export class ReachApi {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  @Get('bags/:id/reach')
  @May('read')
  @ApiOperation({ summary: 'If this bag were bad: packs, lots, pallets and customers that a recall of it would cover' })
  @ApiOkResponse({ schema: { example: bagExample } })
  bag(@Acting() { siteId }: Actor, @Param('id', ParseUUIDPipe) bagId: string): Promise<BagReach> {
    return this.heavy.snapshot((from) => readBagReach(from, siteId, bagId));
  }

  @Get('reach')
  @May('read-reach')
  @ApiOperation({
    summary: 'How large a recall of one bag would be, mean and worst, and with one more proven empty a shift',
  })
  @ApiOkResponse({ schema: { example: plantExample } })
  plant(@Acting() { siteId }: Actor, @Query() query: PlantReachQuery): Promise<PlantReach> {
    return this.heavy.snapshot(async (from) =>
      readPlantReach(from, siteId, await daysOf(from, siteId, query, this.clock.now())),
    );
  }
}
