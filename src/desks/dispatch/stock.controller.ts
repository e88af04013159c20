import { Controller, Get, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { IdField } from '../../platform/web/fields.js';
import { Looking, type Viewer } from '../../platform/web/request.js';
import { stockFormats, stockOf } from './stock.js';
import { stockPage } from './stock.page.js';

export class StockQuery {
  @IdField({ optional: true, says: 'The pack format' })
  format?: string | null;
}

/** The pallets in store that may go, and where they stand. */
@ApiExcludeController()
@Controller('dispatch/stock')
export class DispatchStockController {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  @Get()
  @May('read')
  async stock(@Looking() viewer: Viewer, @Query() query: StockQuery): Promise<VNode> {
    const now = this.clock.now();
    return this.heavy.snapshot(async (from) => {
      const formats = await stockFormats(from, viewer.actor.siteId);
      const format = formats.find(({ id }) => id === query.format) ?? formats[0] ?? null;
      const pallets = format === null ? [] : await stockOf(from, { formatId: format.id, now });
      return stockPage({ viewer, formats, format, pallets });
    });
  }
}
