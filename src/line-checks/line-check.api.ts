import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, MayBeQueued, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { CheckLine } from './check-line.js';
import { CorrectLineCheck, type CorrectLineCheckAnswer } from './correct-line-check.js';
import { CheckLineForm, CorrectLineCheckForm, LineCheckQuery } from './line-check.form.js';
import { lineChecksOf, type LineCheckRow } from './line-checks.js';
import type { CheckAnswer } from './record-check.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';

@ApiTags('line checks')
@Controller('api')
export class LineCheckApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly checkLine: CheckLine,
    private readonly correctCheck: CorrectLineCheck,
  ) {}

  @Get('line-checks')
  @May('read')
  @ApiOperation({ summary: 'The checks that were made, newest entry first' })
  async list(
    @Acting() actor: Actor,
    @Query() query: LineCheckQuery,
  ): Promise<{ readonly items: readonly LineCheckRow[]; readonly next: string | null }> {
    const limit = query.limit ?? 50;
    const items = await lineChecksOf(this.reader, actor.siteId, { ...query, limit });
    return { items, next: items.length === limit ? (items.at(-1)?.id ?? null) : null };
  }

  @Post('check-plans/:id/checks')
  @May('check-line')
  @MayBeQueued()
  @ApiOperation({ summary: 'Somebody checked a line as a plan asks' })
  @ApiCreatedResponse({ schema: { example: { id, planId: id, passed: true, dueAt: '2026-03-12T08:00:00.000Z' } } })
  check(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) planId: string,
    @Body() form: CheckLineForm,
  ): Promise<CheckAnswer> {
    return this.checkLine.execute(asked, planId, form);
  }

  @Post('line-checks/:id/correction')
  @May('correct')
  @ApiOperation({ summary: 'A check was not made, or its results were written down wrongly' })
  @ApiCreatedResponse({ schema: { example: { planId: id, checkId: null, passed: null } } })
  correct(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) checkId: string,
    @Body() form: CorrectLineCheckForm,
  ): Promise<CorrectLineCheckAnswer> {
    return this.correctCheck.execute(asked, checkId, form);
  }
}
