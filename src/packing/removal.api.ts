import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, MayBeQueued, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { CorrectRemoval } from './correct-removal.js';
import { CorrectRemovalForm } from './correction.form.js';
import { removalExample } from './packing.examples.js';
import { RemoveSugarForm } from './removal.form.js';
import { RemoveSugar } from './remove-sugar.js';
import { removalPage } from './run-lists.js';

@ApiTags('removals')
@Controller('api/removals')
export class RemovalApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly removeSugar: RemoveSugar,
    private readonly correctRemoval: CorrectRemoval,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Rejects, samples and sweepings, newest first' })
  @ApiOkResponse({ schema: { example: { items: [{ ...removalExample, scaleErrorMilligrams: null }], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: PageQuery) {
    const page = pageOf(query);
    return listed(await removalPage(this.reader, actor.siteId, page), page);
  }

  @Post()
  @May('run-line')
  @MayBeQueued()
  @ApiOperation({ summary: 'Sugar leaves a line or a hopper otherwise than in accepted packs' })
  @ApiCreatedResponse({ schema: { example: removalExample } })
  remove(@Asking() asked: Asked, @Body() form: RemoveSugarForm) {
    return this.removeSugar.execute(asked, form);
  }

  @Post(':id/correction')
  @May('correct')
  @ApiOperation({ summary: 'A removal was recorded wrongly, or did not occur' })
  correct(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CorrectRemovalForm) {
    return this.correctRemoval.execute(asked, id, form);
  }
}
