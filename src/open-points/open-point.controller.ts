import { Controller, Get, Inject, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { OpenPointQuery } from './open-point.form.js';
import { openPointPage } from './open-point.page.js';
import { openPointsOf } from './open-points.js';

const endedShown = 20;

@ApiExcludeController()
@Controller('open-points')
export class OpenPointController {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: OpenPointQuery): Promise<VNode> {
    const { siteId } = viewer.actor;
    const role = query.role ?? null;
    const before = query.before ?? null;
    const limit = query.limit ?? 100;
    const open = await openPointsOf(this.reader, siteId, { state: 'open', role, before, limit });
    const ended = await openPointsOf(this.reader, siteId, { state: 'ended', role, limit: endedShown });
    const older = open.length === limit ? (open.at(-1)?.id ?? null) : null;
    return openPointPage({ viewer, role, open, ended, older });
  }
}
