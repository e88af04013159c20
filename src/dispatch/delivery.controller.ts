import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { deliveryPage } from './deliveries.js';
import { deliveryView } from './delivery-views.js';
import { deliveryListPage, deliverySinglePage } from './delivery.page.js';
import { paperPage } from './paper-list.js';
import { paperListPage } from './paper-list.page.js';

@ApiExcludeController()
@Controller()
export class DeliveryController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
  ) {}

  @Get('deliveries')
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: PageQuery): Promise<VNode> {
    const page = pageOf(query);
    const { items: deliveries, next: older } = listed(await deliveryPage(this.reader, viewer.actor.siteId, page), page);
    return deliveryListPage({ viewer, deliveries, older });
  }

  @Get('deliveries/:id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const delivery = await deliveryView(this.reader, viewer.actor.siteId, id, this.clock.now());
    return deliverySinglePage({ viewer, delivery });
  }

  @Get('papers')
  @May('read')
  async papers(@Looking() viewer: Viewer, @Query() query: PageQuery): Promise<VNode> {
    const page = pageOf(query);
    const { items: papers, next: older } = listed(await paperPage(this.reader, viewer.actor.siteId, page), page);
    return paperListPage({ viewer, papers, older });
  }
}
