import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { listed, pageOf } from '../platform/web/listed.js';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { parentsOfBins } from './addition-facts.js';
import { CloseReworkBin } from './close-rework-bin.js';
import { binExample } from './hopper.examples.js';
import { CloseReworkBinForm } from './hopper.form.js';
import { findReworkBin, reworkBinPage } from './rework-bins.js';

@ApiTags('rework bins')
@Controller('api/rework-bins')
export class ReworkBinApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly closeReworkBin: CloseReworkBin,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Rework bins, the newest first' })
  @ApiOkResponse({ schema: { example: { items: [binExample], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: PageQuery) {
    const page = pageOf(query);
    return listed(await reworkBinPage(this.reader, actor.siteId, page), page);
  }

  @Get(':id')
  @May('read')
  @ApiOperation({ summary: 'One rework bin, with the packs that it came from' })
  async one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string) {
    const bin = await findReworkBin(this.reader, actor.siteId, id);
    return { bin, parents: await parentsOfBins(this.reader, [id]) };
  }

  @Post()
  @May('run-line')
  @ApiOperation({ summary: 'Close a rework bin with the packs that it came from' })
  @ApiCreatedResponse({ schema: { example: binExample } })
  close(@Asking() asked: Asked, @Body() form: CloseReworkBinForm) {
    return this.closeReworkBin.execute(asked, form);
  }
}
