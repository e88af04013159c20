import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { EndDryerRunForm, StartDryerRunForm } from './dryer-run.form.js';
import { dryerRunPage, findDryerRun, type DryerRunRow } from './dryer-runs.js';
import { EndDryerRun } from './end-dryer-run.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { StartDryerRun } from './start-dryer-run.js';

const runExample = {
  id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10',
  siteId: '0195862e-0000-7a4b-9c55-0d0f6f1b7a10',
  number: 'DR-2026-000012',
  dryerId: '0195862e-1111-7a4b-9c55-0d0f6f1b7a10',
  gradeId: '0195862e-2222-7a4b-9c55-0d0f6f1b7a10',
  startedAt: '2026-03-12T05:00:00.000Z',
  endedAt: null,
};

@ApiTags('dryer runs')
@Controller('api')
export class DryerRunApi {
  constructor(
    private readonly startRun: StartDryerRun,
    private readonly endRun: EndDryerRun,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Post('dryer-runs')
  @May('fill-bags')
  @ApiOperation({ summary: 'A dryer begins to make a grade' })
  @ApiCreatedResponse({ schema: { example: { id: runExample.id, number: runExample.number } } })
  start(@Asking() asked: Asked, @Body() form: StartDryerRunForm): Promise<{ id: string; number: string }> {
    return this.startRun.execute(asked, form);
  }

  @Post('dryer-run-ends')
  @May('fill-bags')
  @ApiOperation({ summary: 'A dryer run ends' })
  @ApiCreatedResponse({
    schema: { example: { id: runExample.id, number: runExample.number, endedAt: '2026-03-12T13:00:00.000Z' } },
  })
  end(@Asking() asked: Asked, @Body() form: EndDryerRunForm): Promise<{ id: string; number: string; endedAt: string }> {
    return this.endRun.execute(asked, form);
  }

  @Get('dryer-runs')
  @May('read')
  @ApiOperation({ summary: 'Dryer runs, latest recorded first' })
  @ApiOkResponse({ schema: { example: { items: [runExample], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: PageQuery): Promise<Listed<DryerRunRow>> {
    const page = pageOf(query);
    return listed(await dryerRunPage(this.reader, actor.siteId, page), page);
  }

  @Get('dryer-runs/:id')
  @May('read')
  @ApiOperation({ summary: 'One dryer run' })
  @ApiOkResponse({ schema: { example: runExample } })
  one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string): Promise<DryerRunRow> {
    return findDryerRun(this.reader, actor.siteId, id);
  }
}
