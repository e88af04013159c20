import { Body, Controller, Get, Post, Query, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { HoldRow } from '../disposition/standings.js';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { Acting, Asking } from '../platform/web/request.js';
import { sendHeld } from '../platform/web/send-held.js';
import { lineCheckOf } from '../line-checks/line-checks.js';
import { question } from './hold-reach.question.js';
import { HoldScopeForm, HoldSinceLastGoodForm, PlaceHoldForm } from './hold.form.js';
import { HoldSinceLastGood, type HeldSince } from './hold-since-last-good.js';
import { PlaceHold } from './place-hold.js';
import { suspectsOfCheck, type Suspects } from './suspects-of-check.js';

const holdExample = {
  id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10',
  number: 'HO-2026-000012',
  scopeKind: 'lot',
  scopeId: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a11',
  fromCount: null,
  toCount: null,
  fromAt: null,
  untilAt: null,
  hazard: 'safety',
  reason: 'metal check failed at 14:30, last good check 13:30',
  placedAt: '2026-03-12T14:35:00.000Z',
};

const placesExample = [
  { place: 'in-store', packCount: 960, milligrams: 1_921_248_000 },
  { place: 'loose', packCount: 240, milligrams: 480_312_000 },
];

@ApiTags('holds')
@Controller('api/holds')
export class HoldReachApi {
  constructor(
    private readonly placeHold: PlaceHold,
    private readonly holdSince: HoldSinceLastGood,
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  @Post()
  @May('place-holds')
  @ApiOperation({ summary: 'Place a hold. It is a safety hold until a quality officer sets its class' })
  @ApiCreatedResponse({ schema: { example: holdExample } })
  place(@Asking() asked: Asked, @Body() form: PlaceHoldForm): Promise<HoldRow> {
    return this.placeHold.execute(asked, form);
  }

  @Get('reach')
  @May('read')
  @ApiOperation({ summary: 'The pallets that a hold would cover, before it is placed' })
  async reach(
    @Acting() { siteId }: Actor,
    @Query() form: HoldScopeForm,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<Buffer> {
    return sendHeld(reply, await this.heavy.askHeld(question, { siteId, form: { ...form } }));
  }

  @Post('since-last-good')
  @May('place-holds')
  @ApiOperation({ summary: 'Hold everything that a failed line check makes suspect and nobody holds yet' })
  @ApiCreatedResponse({
    schema: { example: { checkId: holdExample.id, packCount: 1200, places: placesExample, holds: [holdExample] } },
  })
  since(@Asking() asked: Asked, @Body() form: HoldSinceLastGoodForm): Promise<HeldSince> {
    return this.holdSince.execute(asked, form);
  }

  @Get('suspects')
  @May('read')
  @ApiOperation({ summary: 'What a failed line check makes suspect, where it is, and what of it nobody holds yet' })
  async suspects(@Acting() actor: Actor, @Query() { check }: HoldSinceLastGoodForm): Promise<Suspects> {
    return this.heavy.snapshot(async (from) => {
      return suspectsOfCheck(from, await lineCheckOf(from, actor.siteId, check), this.clock.now());
    });
  }
}
