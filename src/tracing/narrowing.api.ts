import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Query, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { WidenHoldForm } from '../disposition/hold.form.js';
import { narrowingsOf, type NarrowingRow } from '../disposition/narrowings.js';
import { findHold } from '../disposition/holds.js';
import { WidenHold } from '../disposition/widen-hold.js';
import type { Asked } from '../journal/entry-draft.js';
import { partProof } from '../people/proof.form.js';
import { ProveAgain } from '../people/prove-again.js';
import { withRetryAfter } from '../people/sign-in-place.js';
import { May, type Actor } from '../platform/actor.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { Acting, Asking, type HouseRequest } from '../platform/web/request.js';
import { NarrowedParts, NarrowHoldForm } from './hold.form.js';
import { NarrowHold, openHold, type NarrowAnswer } from './narrow-hold.js';
import { previewNarrowing, type NarrowingPreview } from './narrowing-preview.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';

@ApiTags('holds')
@Controller('api')
export class NarrowingApi {
  constructor(
    private readonly narrowHold: NarrowHold,
    private readonly widenHold: WidenHold,
    private readonly proveAgain: ProveAgain,
    private readonly heavy: HeavyReads,
  ) {}

  @Get('holds/:id/narrowings')
  @May('read')
  @ApiOperation({ summary: 'What quality took out of a hold, by what ground, when and why' })
  async list(
    @Acting() actor: Actor,
    @Param('id', ParseUUIDPipe) holdId: string,
  ): Promise<{ readonly items: readonly NarrowingRow[] }> {
    return this.heavy.snapshot(async (from) => {
      const hold = await findHold(from, actor.siteId, holdId);
      return { items: await narrowingsOf(from, [hold.id]) };
    });
  }

  @Get('holds/:id/narrowing-preview')
  @May('read')
  @ApiOperation({ summary: 'What a narrowing would take out of a hold, where it is, and what stays' })
  async preview(
    @Acting() actor: Actor,
    @Param('id', ParseUUIDPipe) holdId: string,
    @Query() form: NarrowedParts,
  ): Promise<NarrowingPreview> {
    return this.heavy.snapshot(async (from) => {
      return previewNarrowing(from, actor.siteId, await openHold(from, actor.siteId, holdId), form);
    });
  }

  @Post('hold-narrowings')
  @May('lift-holds')
  @ApiOperation({ summary: 'A quality officer takes parts out of a hold, having proved once more who they are' })
  @ApiCreatedResponse({ schema: { example: { id, holdId: id, number: 'H-2026-000007', partCount: 2 } } })
  async narrow(
    @Asking() asked: Asked,
    @Body() form: NarrowHoldForm,
    @Req() request: HouseRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<NarrowAnswer> {
    const { proof, rest } = partProof(form);
    await withRetryAfter(reply, this.proveAgain.execute(asked.actor, proof, { address: request.ip }));
    return this.narrowHold.execute(asked, rest);
  }

  @Post('hold-widenings')
  @May('lift-holds')
  @ApiOperation({ summary: 'A quality officer takes a narrowing back: the hold reaches again what it reached before' })
  @ApiCreatedResponse({ schema: { example: { holdId: id, narrowingId: id } } })
  widen(@Asking() asked: Asked, @Body() form: WidenHoldForm): Promise<{ holdId: string; narrowingId: string }> {
    return this.widenHold.execute(asked, form);
  }
}
