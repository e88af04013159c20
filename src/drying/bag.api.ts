import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { weighingsOf, type WeighingRow } from './bag-weighings.js';
import { CorrectBagForm, MoveBagForm, PrintBagLabelForm } from './bag.form.js';
import { bagPage, findBag, type BagRow } from './bulk-bags.js';
import { CorrectBag } from './correct-bag.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { MoveBag } from './move-bag.js';
import { PrintBagLabel } from './print-bag-label.js';

const bagExample = {
  id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10',
  number: 'B0012344',
  sscc: '095201230000000011',
  origin: 'dryer-run',
  filledAt: '2026-03-12T05:20:00.000Z',
  status: 'full',
  netGrams: 996_500,
  lowerGrams: 994_500,
  upperGrams: 998_500,
  remainingGrams: 996_500,
  isDoubtful: false,
};

@ApiTags('bulk bags')
@Controller('api')
export class BagApi {
  constructor(
    private readonly moveBag: MoveBag,
    private readonly correctBag: CorrectBag,
    private readonly printLabel: PrintBagLabel,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get('bags')
  @May('read')
  @ApiOperation({ summary: 'Bulk bags, latest recorded first' })
  @ApiOkResponse({ schema: { example: { items: [bagExample], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: PageQuery): Promise<Listed<BagRow>> {
    const page = pageOf(query);
    return listed(await bagPage(this.reader, actor.siteId, page), page);
  }

  @Get('bags/:id')
  @May('read')
  @ApiOperation({ summary: 'One bulk bag with its weighings' })
  @ApiOkResponse({ schema: { example: { bag: bagExample, weighings: [] } } })
  async one(
    @Acting() actor: Actor,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<{ bag: BagRow; weighings: readonly WeighingRow[] }> {
    const bag = await findBag(this.reader, actor.siteId, id);
    return { bag, weighings: await weighingsOf(this.reader, bag.id) };
  }

  @Post('bag-moves')
  @May('move-bags')
  @ApiOperation({ summary: 'A bag is put at another place of the store' })
  @ApiCreatedResponse({ schema: { example: { id: bagExample.id, number: 'B0012344', placeId: bagExample.id } } })
  move(@Asking() asked: Asked, @Body() form: MoveBagForm): Promise<{ id: string; number: string; placeId: string }> {
    return this.moveBag.execute(asked, form);
  }

  @Post('bag-labels')
  @May('fill-bags')
  @ApiOperation({ summary: 'Print a label for a bag; the PDF is /papers/{paperId}/file' })
  @ApiCreatedResponse({ schema: { example: { paperId: bagExample.id, copyNumber: 1 } } })
  label(@Asking() asked: Asked, @Body() form: PrintBagLabelForm): Promise<{ paperId: string; copyNumber: number }> {
    return this.printLabel.execute(asked, form);
  }

  @Post('bag-corrections')
  @May('correct')
  @ApiOperation({ summary: 'A bag was recorded that does not exist' })
  @ApiCreatedResponse({ schema: { example: { id: bagExample.id, number: 'B0012344' } } })
  correct(@Asking() asked: Asked, @Body() form: CorrectBagForm): Promise<{ id: string; number: string }> {
    return this.correctBag.execute(asked, form);
  }
}
