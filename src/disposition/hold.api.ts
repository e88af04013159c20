import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import type { Asked } from '../journal/entry-draft.js';
import { partProof } from '../people/proof.form.js';
import { ProveAgain } from '../people/prove-again.js';
import { withRetryAfter } from '../people/sign-in-place.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking, type HouseRequest } from '../platform/web/request.js';
import { LiftHoldForm, SetHoldClassForm } from './hold.form.js';
import { findHold, holdPage, type HoldLine } from './holds.js';
import { LiftHold } from './lift-hold.js';
import { SetHoldClass } from './set-hold-class.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const holdExample = {
  id,
  number: 'H-2026-000007',
  scopeKind: 'bulk-bag',
  scopeId: id,
  fromCount: null,
  toCount: null,
  reason: 'Torn sieve at the dryer',
  placedAt: '2026-03-12T07:00:00.000Z',
  hazardSet: null,
  classReason: null,
  liftedAt: null,
  liftReason: null,
};

@ApiTags('quality')
@Controller('api')
export class HoldApi {
  constructor(
    private readonly setHoldClass: SetHoldClass,
    private readonly liftHold: LiftHold,
    private readonly proveAgain: ProveAgain,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get('holds')
  @May('read')
  @ApiOperation({ summary: 'Holds, latest placed first' })
  @ApiOkResponse({ schema: { example: { items: [holdExample], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: PageQuery): Promise<Listed<HoldLine>> {
    const page = pageOf(query);
    return listed(await holdPage(this.reader, actor.siteId, page), page);
  }

  @Get('holds/:id')
  @May('read')
  @ApiOperation({ summary: 'One hold' })
  @ApiOkResponse({ schema: { example: holdExample } })
  one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) holdId: string): Promise<HoldLine> {
    return findHold(this.reader, actor.siteId, holdId);
  }

  @Post('hold-classes')
  @May('lift-holds')
  @ApiOperation({ summary: 'A quality officer sets the class of a hold' })
  @ApiCreatedResponse({ schema: { example: { holdId: id, hazard: 'quality' } } })
  setClass(
    @Asking() asked: Asked,
    @Body() form: SetHoldClassForm,
  ): Promise<{ holdId: string; hazard: 'safety' | 'quality' }> {
    return this.setHoldClass.execute(asked, form);
  }

  @Post('hold-lifts')
  @May('lift-holds')
  @ApiOperation({ summary: 'Quality lifts a hold, having proved once more who they are' })
  @ApiCreatedResponse({
    schema: { example: { holdId: id, number: 'H-2026-000007', liftedAt: '2026-03-13T07:00:00.000Z' } },
  })
  async lift(
    @Asking() asked: Asked,
    @Body() form: LiftHoldForm,
    @Req() request: HouseRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<{ holdId: string; number: string; liftedAt: string }> {
    const { proof, rest } = partProof(form);
    await withRetryAfter(reply, this.proveAgain.execute(asked.actor, proof, { address: request.ip }));
    return this.liftHold.execute(asked, rest);
  }
}
