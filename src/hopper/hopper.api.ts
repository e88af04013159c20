import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { CorrectEmpty } from './correct-empty.js';
import { contentExample, correctedEmptyExample, emptyExample, levelExample, periodExample } from './hopper.examples.js';
import { CorrectEmptyForm, ProveEmptyForm, RunDownForm, SeeLevelForm } from './hopper.form.js';
import { contentOf } from './hopper-content.js';
import { levelOf } from './hopper-level.js';
import { hoppersOf, hopperOfSite, periodPage, readPeriodView } from './hopper-views.js';
import { ProveEmpty } from './prove-empty.js';
import { RunDown } from './run-down.js';
import { SeeLevel } from './see-level.js';

@ApiTags('hoppers')
@Controller('api')
export class HopperApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly heavy: HeavyReads,
  ) {}

  @Get('hoppers')
  @May('read')
  @ApiOperation({ summary: 'The hoppers, each with its level now' })
  @ApiOkResponse({ schema: { example: { items: [{ id: '…', code: 'H1', name: 'Hopper 1', level: levelExample }] } } })
  async list(@Acting() actor: Actor) {
    return { items: await this.heavy.snapshot((from) => hoppersOf(from, actor.siteId)), next: null };
  }

  @Get('hoppers/:id/level')
  @May('read')
  @ApiOperation({ summary: 'What is inside by the records, and what in them cannot be true' })
  @ApiOkResponse({ schema: { example: levelExample } })
  async level(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string) {
    await hopperOfSite(this.reader, actor.siteId, id);
    return this.heavy.snapshot((from) => levelOf(from, id));
  }

  @Get('hoppers/:id/content')
  @May('read')
  @ApiOperation({ summary: 'Which bags may be inside now, with least, likely and most grams of each' })
  @ApiOkResponse({ schema: { example: contentExample } })
  async content(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string) {
    await hopperOfSite(this.reader, actor.siteId, id);
    return this.heavy.snapshot((from) => contentOf(from, id));
  }

  @Get('hoppers/:id/periods')
  @May('read')
  @ApiOperation({ summary: 'The periods of a hopper from one proven empty to the next, the newest first' })
  @ApiOkResponse({ schema: { example: { items: [periodExample], next: null } } })
  async periods(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string, @Query() query: PageQuery) {
    await hopperOfSite(this.reader, actor.siteId, id);
    return periodPage(this.reader, id, query);
  }

  @Get('hopper-periods/:id')
  @May('read')
  @ApiOperation({ summary: 'One hopper period: what went in, what left, levels seen' })
  async period(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string) {
    return this.heavy.snapshot((from) => readPeriodView(from, actor.siteId, id));
  }
}

@ApiTags('hoppers')
@Controller('api')
export class HopperRecordsApi {
  constructor(
    private readonly seeLevel: SeeLevel,
    private readonly runDown: RunDown,
    private readonly proveEmpty: ProveEmpty,
    private readonly correctEmpty: CorrectEmpty,
  ) {}

  @Post('hoppers/:id/levels')
  @May('tip-bags')
  @ApiOperation({ summary: 'A probe, a load cell or a sight glass shows the level' })
  see(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: SeeLevelForm) {
    return this.seeLevel.execute(asked, id, form);
  }

  @Post('hoppers/:id/run-downs')
  @May('tip-bags')
  @ApiOperation({ summary: 'The hopper ran down to a few kilograms: a level that was seen, no proof of emptiness' })
  run(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: RunDownForm) {
    return this.runDown.execute(asked, id, form);
  }

  @Post('hoppers/:id/empties')
  @May('prove-empty')
  @ApiOperation({ summary: 'Flow stopped, opened and looked in by two people: the period ends' })
  @ApiCreatedResponse({ schema: { example: emptyExample } })
  prove(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: ProveEmptyForm) {
    return this.proveEmpty.execute(asked, id, form);
  }
  @Post('hopper-periods/:id/empty/correction')
  @May('prove-empty')
  @ApiOperation({
    summary: 'The proven empty that ended a period was at another time, left another residue, or was none',
  })
  @ApiCreatedResponse({ schema: { example: correctedEmptyExample } })
  correct(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CorrectEmptyForm) {
    return this.correctEmpty.execute(asked, id, form);
  }
}
