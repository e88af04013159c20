import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { Acting, Asking } from '../platform/web/request.js';
import { FilmLotsQuery, LotsQuery, PrintLotLabelForm } from './lot.form.js';
import { filmLotExample, lotExample, lotRangeExample } from './packing.examples.js';
import { filmLotOf, filmRanges, findFilmLots, findLots, rangesOfLot } from './packing-runs.js';
import { PrintLotLabel } from './print-lot-label.js';
import { filmLotPage, lotPage, readLotOfSite } from './run-lists.js';

@ApiTags('lots')
@Controller('api/lots')
export class LotApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly printLotLabel: PrintLotLabel,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Lots, newest first; with a code those that carry it or begin with it' })
  @ApiOkResponse({ schema: { example: { items: [lotExample], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: LotsQuery) {
    const page = pageOf(query);
    if (query.code == null) return listed(await lotPage(this.reader, actor.siteId, page), page);
    return { items: await findLots(this.reader, actor.siteId, query.code, { prefix: true }), next: null };
  }

  @Get(':id')
  @May('read')
  @ApiOperation({ summary: 'One lot and the ranges of runs that carry its code' })
  @ApiOkResponse({ schema: { example: { lot: lotExample, ranges: [lotRangeExample] } } })
  async one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string) {
    const lot = await readLotOfSite(this.reader, actor.siteId, id);
    return { lot, ranges: await rangesOfLot(this.reader, lot.id) };
  }

  @Post(':id/labels')
  @May('run-line')
  @ApiOperation({ summary: 'Print a card for a lot; its PDF is /papers/{paperId}/file' })
  @ApiCreatedResponse({ schema: { example: { paperId: lotExample.id, copyNumber: 1 } } })
  print(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: PrintLotLabelForm) {
    return this.printLotLabel.execute(asked, id, form);
  }
}

@ApiTags('film lots')
@Controller('api/film-lots')
export class FilmLotApi {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Lots of film, preprinted bags, labels and glue, newest first; with a code that one' })
  @ApiOkResponse({ schema: { example: { items: [filmLotExample], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: FilmLotsQuery) {
    const page = pageOf(query);
    if (query.code == null) return listed(await filmLotPage(this.reader, actor.siteId, page), page);
    return { items: await findFilmLots(this.reader, actor.siteId, query.code), next: null };
  }

  @Get(':id')
  @May('read')
  @ApiOperation({ summary: 'One film lot and the ranges of runs that it was used on' })
  @ApiOkResponse({ schema: { example: { filmLot: filmLotExample, ranges: [] } } })
  async one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string) {
    const filmLot = await filmLotOf(this.reader, id);
    if (filmLot.siteId !== actor.siteId) throw new NotFound('film-lot', id);
    return { filmLot, ranges: await filmRanges(this.reader, id) };
  }
}
