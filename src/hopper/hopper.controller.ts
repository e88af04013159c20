import { Controller, Get, Param, ParseUUIDPipe } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../platform/actor.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { hopperListPage } from './hopper-list.page.js';
import { hopperPage } from './hopper.page.js';
import { hopperPeriodPage } from './hopper-period.page.js';
import { hoppersOf, readHopperView, readPeriodView } from './hopper-views.js';

@ApiExcludeController()
@Controller('hoppers')
export class HopperController {
  constructor(private readonly heavy: HeavyReads) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer): Promise<VNode> {
    const hoppers = await this.heavy.snapshot((from) => hoppersOf(from, viewer.actor.siteId));
    return hopperListPage({ viewer, hoppers });
  }

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const view = await this.heavy.snapshot((from) => readHopperView(from, viewer.actor.siteId, id));
    return hopperPage({ viewer, view });
  }
}

@ApiExcludeController()
@Controller('hopper-periods')
export class HopperPeriodController {
  constructor(private readonly heavy: HeavyReads) {}

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const view = await this.heavy.snapshot((from) => readPeriodView(from, viewer.actor.siteId, id));
    return hopperPeriodPage({ viewer, view });
  }
}
