import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import type { ClosedBag } from './close-bag.js';
import { receiptOf, receiptPage, type ReceiptRow } from './goods-receipts.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { ReceiveBags, type ReceivedBags } from './receive-bags.js';
import { ReceiveBagsForm, RecordOpeningStockForm } from './receipt.form.js';
import { RecordOpeningStock } from './record-opening-stock.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const bag = { id, number: 'B0012344', sscc: '095201230000000011', netGrams: 999_400, isDoubtful: false };
const receiptExample = {
  id,
  number: 'GR-2026-000004',
  gradeId: id,
  supplierCode: 'SUP-07',
  supplierLot: 'A-4471',
  documentNumber: 'DN 88213',
  receivedAt: '2026-03-12T08:00:00.000Z',
};

@ApiTags('receipts')
@Controller('api')
export class ReceiptApi {
  constructor(
    private readonly receiveBags: ReceiveBags,
    private readonly recordOpeningStock: RecordOpeningStock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Post('receipts')
  @May('receive-goods')
  @ApiOperation({ summary: 'Bags come from a supplier and go over our scale' })
  @ApiCreatedResponse({ schema: { example: { id, number: 'GR-2026-000004', bags: [bag] } } })
  receive(@Asking() asked: Asked, @Body() form: ReceiveBagsForm): Promise<ReceivedBags> {
    return this.receiveBags.execute(asked, form);
  }

  @Get('receipts')
  @May('read')
  @ApiOperation({ summary: 'Receipts, latest recorded first' })
  @ApiOkResponse({ schema: { example: { items: [receiptExample], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: PageQuery): Promise<Listed<ReceiptRow>> {
    const page = pageOf(query);
    return listed(await receiptPage(this.reader, actor.siteId, page), page);
  }

  @Get('receipts/:id')
  @May('read')
  @ApiOperation({ summary: 'One receipt' })
  @ApiOkResponse({ schema: { example: receiptExample } })
  one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) receiptId: string): Promise<ReceiptRow> {
    return receiptOf(this.reader, actor.siteId, receiptId);
  }

  @Post('opening-stock')
  @May('receive-goods')
  @ApiOperation({ summary: 'The bags that stood in the store on day one' })
  @ApiCreatedResponse({ schema: { example: { bags: [bag] } } })
  openingStock(@Asking() asked: Asked, @Body() form: RecordOpeningStockForm): Promise<{ bags: readonly ClosedBag[] }> {
    return this.recordOpeningStock.execute(asked, form);
  }
}
