import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { say } from '../platform/sentences/sentences.js';
import { Acting, Asking } from '../platform/web/request.js';
import { ExplainPoint } from './explain-point.js';
import { ExplainPointForm, OpenPointQuery, ShelvePointForm } from './open-point.form.js';
import { ShelvePoint } from './shelve-point.js';
import { openPointsOf, type PointRow } from './open-points.js';

/** A point with its sentence. */
type SaidPoint = PointRow & { readonly sentence: string };

const example = {
  id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10',
  cause: 'scale-check-overdue',
  facts: { scale: 'S2' },
  sentence: 'Scale S2 is overdue for its check …',
  subjectKind: 'scale',
  role: 'quality-officer',
  raisedAt: '2026-03-12T06:00:00.000Z',
  how: null,
};

@ApiTags('open points')
@Controller('api/open-points')
export class OpenPointApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly explainPoint: ExplainPoint,
    private readonly shelvePoint: ShelvePoint,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'What people must look at, newest first; open ones unless ended ones are asked for' })
  @ApiOkResponse({ schema: { example: { items: [example], next: null } } })
  async list(
    @Acting() actor: Actor,
    @Query() query: OpenPointQuery,
  ): Promise<{ readonly items: readonly SaidPoint[]; readonly next: string | null }> {
    const limit = query.limit ?? 50;
    const state = query.state === 'ended' ? 'ended' : 'open';
    const choice = { state, role: query.role ?? null, before: query.before ?? null, limit } as const;
    const points = await openPointsOf(this.reader, actor.siteId, choice);
    return {
      items: points.map((point) => ({ ...point, sentence: say(point.cause, point.facts) })),
      next: points.length === limit ? (points.at(-1)?.id ?? null) : null,
    };
  }

  @Post(':id/explanation')
  @May('answer-open-points')
  @ApiOperation({ summary: 'Say why a point stays as it is' })
  @ApiCreatedResponse({ schema: { example: { id: example.id } } })
  explain(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: ExplainPointForm,
  ): Promise<{ readonly id: string }> {
    return this.explainPoint.execute(asked, id, form);
  }

  @Post(':id/shelf')
  @May('answer-open-points')
  @ApiOperation({ summary: 'Put the banner of a point aside for some minutes; the point stays open' })
  @ApiCreatedResponse({ schema: { example: { untilAt: '2026-03-12T06:30:00.000Z' } } })
  shelve(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: ShelvePointForm,
  ): Promise<{ readonly untilAt: string }> {
    return this.shelvePoint.execute(asked, id, form);
  }
}
