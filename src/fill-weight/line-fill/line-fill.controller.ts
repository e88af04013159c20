import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Looking, type Viewer } from '../../platform/web/request.js';
import { ofSite } from '../../plant/of-site.js';
import { lineOf } from '../../plant/plant-facts.js';
import { adviseFill } from './advise-fill.js';
import { readLineFill } from './line-fill.js';
import { lineFillPage } from './line-fill.page.js';
import { LineFillQuery } from './line-fill.query.js';

/** How a line fills, and what to set it to. */
@ApiExcludeController()
@Controller('lines')
export class LineFillController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
  ) {}

  @Get(':id/fill')
  @May('read')
  async fill(
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Query() query: LineFillQuery,
  ): Promise<VNode> {
    const line = ofSite(viewer.actor, 'packing-line', await lineOf(this.reader, id));
    const fill = await readLineFill(this.reader, line.id, this.clock.now());
    return lineFillPage({ viewer, line, query, period: fill.period, formats: adviseFill(fill, query) });
  }
}
