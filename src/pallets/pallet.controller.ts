import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../platform/actor.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { palletPage } from './pallet-list.js';
import { palletView } from './pallet-views.js';
import { palletListPage, palletSinglePage } from './pallet.page.js';

@ApiExcludeController()
@Controller('pallets')
export class PalletController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly heavy: HeavyReads,
  ) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: PageQuery): Promise<VNode> {
    const page = pageOf(query);
    const { items: pallets, next: older } = listed(await palletPage(this.reader, viewer.actor.siteId, page), page);
    return palletListPage({ viewer, pallets, older });
  }

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const pallet = await this.heavy.snapshot((from) => palletView(from, viewer.actor.siteId, id));
    return palletSinglePage({ viewer, pallet });
  }
}
