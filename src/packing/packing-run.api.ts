import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, MayBeQueued, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { ChangeCode } from './change-code.js';
import { CloseRun } from './close-run.js';
import { CountLoosePacks } from './count-loose-packs.js';
import { CountPacks } from './count-packs.js';
import { FitFilm } from './fit-film.js';
import { ChangeCodeForm, CloseRunForm, CountLoosePacksForm, CountPacksForm, FitFilmForm } from './packing-run.form.js';
import { findRun } from './packing-runs.js';
import { countPage, runPage } from './run-lists.js';
import { readRunView } from './run-view.js';
import {
  changeExample,
  closeExample,
  countExample,
  filmExample,
  looseExample,
  runExample,
} from './packing.examples.js';

@ApiTags('packing runs')
@Controller('api/runs')
export class PackingRunApi {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Packing runs, newest first' })
  @ApiOkResponse({ schema: { example: { items: [runExample], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: PageQuery) {
    const page = pageOf(query);
    return listed(await runPage(this.reader, actor.siteId, page), page);
  }

  @Get(':id')
  @May('read')
  @ApiOperation({ summary: 'One run: its lots, film, stops, removals and loose packs' })
  @ApiOkResponse({ schema: { example: { run: runExample, lots: [], films: [], stops: [], removals: [], loose: [] } } })
  async one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string) {
    return readRunView(this.reader, await findRun(this.reader, actor.siteId, id));
  }

  @Get(':id/counts')
  @May('read')
  @ApiOperation({ summary: 'The counts of a run, newest first' })
  async counts(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string, @Query() query: PageQuery) {
    const run = await findRun(this.reader, actor.siteId, id);
    const page = pageOf(query);
    return listed(await countPage(this.reader, run.id, page), page);
  }
}

@ApiTags('packing runs')
@Controller('api/runs')
export class RunRecordsApi {
  constructor(
    private readonly countPacks: CountPacks,
    private readonly changeCode: ChangeCode,
    private readonly fitFilm: FitFilm,
    private readonly countLoosePacks: CountLoosePacks,
    private readonly closeRun: CloseRun,
  ) {}

  @Post(':id/counts')
  @May('count-packs')
  @MayBeQueued()
  @ApiOperation({ summary: 'Count accepted packs: one reading, or a list of a device’s readings' })
  @ApiCreatedResponse({ schema: { example: countExample } })
  count(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CountPacksForm) {
    return this.countPacks.execute(asked, id, form);
  }

  @Post(':id/codes')
  @May('run-line')
  @ApiOperation({ summary: 'The coder prints another code from a pack on' })
  @ApiCreatedResponse({ schema: { example: changeExample } })
  code(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: ChangeCodeForm) {
    return this.changeCode.execute(asked, id, form);
  }

  @Post(':id/films')
  @May('run-line')
  @MayBeQueued()
  @ApiOperation({ summary: 'Film, preprinted bags, labels or glue of a lot are on the machine from a pack on' })
  @ApiCreatedResponse({ schema: { example: filmExample } })
  film(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: FitFilmForm) {
    return this.fitFilm.execute(asked, id, form);
  }

  @Post(':id/loose-counts')
  @May('run-line')
  @MayBeQueued()
  @ApiOperation({ summary: 'Packs loose on belts and tables are counted at a handover' })
  @ApiCreatedResponse({ schema: { example: looseExample } })
  loose(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CountLoosePacksForm) {
    return this.countLoosePacks.execute(asked, id, form);
  }

  @Post(':id/close')
  @May('run-line')
  @ApiOperation({ summary: 'Close a run with its last count' })
  @ApiCreatedResponse({ schema: { example: closeExample } })
  close(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CloseRunForm) {
    return this.closeRun.execute(asked, id, form);
  }
}
