import { Body, Controller, Get, Inject, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../../journal/entry-draft.js';
import { May, type Actor } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Acting, Asking } from '../../platform/web/request.js';
import { SetFormatSaleForm } from './format-sale.form.js';
import { salesOfSite } from './format-sales.js';
import { SetFormatSale } from './set-format-sale.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const validFrom = '2026-03-12T06:00:00.000Z';
const saleExample = { markets: ['eu', 'us'], pricePerKilogram: '0.62', currency: 'EUR', validFrom };

@ApiTags('fill weights')
@Controller('api/format-sales')
export class FormatSaleApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly setSale: SetFormatSale,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Where each pack format is sold now, and what a kilogram is worth' })
  @ApiOkResponse({
    schema: { example: { items: [{ formatId: id, formatName: 'White 1 kg', sale: saleExample }], next: null } },
  })
  async list(@Acting() actor: Actor) {
    return { items: await salesOfSite(this.reader, actor.siteId, this.clock.now()), next: null };
  }

  @Post()
  @May('set-up-plant')
  @ApiOperation({ summary: 'Say where a pack format is sold, and what a kilogram is worth, from an instant on' })
  @ApiCreatedResponse({ schema: { example: { id, validFrom } } })
  set(@Asking() asked: Asked, @Body() form: SetFormatSaleForm) {
    return this.setSale.execute(asked, form);
  }
}
