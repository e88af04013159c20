import { Controller, Get, Param, ParseUUIDPipe, Query, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { VNode } from 'preact';
import { May } from '../../platform/actor.js';
import { Looking, type Viewer } from '../../platform/web/request.js';
import { LineDesk } from './line-desk.js';
import { ChooseLineQuery, ScanQuery } from './line.form.js';
import { linesOf } from './line-rows.js';
import { linesPage } from './lines.page.js';
import { shiftPage } from './shift.page.js';

/** Which line this device stands at. */
const lineCookie = 'packthread-line';
const rememberedSeconds = 90 * 86_400;

@ApiExcludeController()
@Controller('line')
export class LineController {
  constructor(private readonly desk: LineDesk) {}

  @Get()
  @May('read')
  async choose(
    @Looking() viewer: Viewer,
    @Query() query: ChooseLineQuery,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode | null> {
    const lines = await linesOf(this.desk.reader, viewer.actor.siteId);
    const remembered = lines.find(({ id }) => id === request.cookies[lineCookie]);
    const only = lines.length === 1 ? lines[0] : remembered;
    if (only === undefined || query.choose != null) return linesPage({ viewer, lines });
    void reply.status(303).header('Location', `/line/${only.id}`);
    return null;
  }

  @Get(':lineId')
  @May('read')
  async shift(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Query() query: ScanQuery,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode> {
    const view = await this.desk.shift(viewer, lineId, query.scan ?? null);
    const cookie = { path: '/line', httpOnly: true, sameSite: 'lax', maxAge: rememberedSeconds } as const;
    void reply.setCookie(lineCookie, lineId, cookie);
    return shiftPage({ viewer, view });
  }
}
