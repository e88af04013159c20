import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, MayBeQueued, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { CorrectStop } from './correct-stop.js';
import { CorrectStopForm } from './correction.form.js';
import { StartLineAgainForm, StopLineForm, StopsQuery } from './line-stop.form.js';
import { restartExample, stopExample } from './packing.examples.js';
import { findRun, stopsOf } from './packing-runs.js';
import { StartLineAgain } from './start-line-again.js';
import { StopLine } from './stop-line.js';

@ApiTags('stops')
@Controller('api/stops')
export class LineStopApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly stopLine: StopLine,
    private readonly startLineAgain: StartLineAgain,
    private readonly correctStop: CorrectStop,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'The stops of a run, in the order of time' })
  @ApiOkResponse({ schema: { example: { items: [{ ...stopExample, startedAgainAt: null }], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: StopsQuery) {
    const run = await findRun(this.reader, actor.siteId, query.run);
    return { items: await stopsOf(this.reader, [run.id]), next: null };
  }

  @Post()
  @May('run-line')
  @MayBeQueued()
  @ApiOperation({ summary: 'A line stands still' })
  @ApiCreatedResponse({ schema: { example: stopExample } })
  stop(@Asking() asked: Asked, @Body() form: StopLineForm) {
    return this.stopLine.execute(asked, form);
  }

  @Post(':id/restart')
  @May('run-line')
  @MayBeQueued()
  @ApiOperation({ summary: 'The line runs again' })
  @ApiCreatedResponse({ schema: { example: restartExample } })
  restart(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: StartLineAgainForm) {
    return this.startLineAgain.execute(asked, id, form);
  }

  @Post(':id/correction')
  @May('correct')
  @ApiOperation({ summary: 'A stop got the wrong reason, or did not occur' })
  correct(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CorrectStopForm) {
    return this.correctStop.execute(asked, id, form);
  }
}
