import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import type { VNode } from 'preact';
import { bagsOf } from '../drying/bulk-bags.js';
import { dryerRunOf } from '../drying/dryer-runs.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PageQuery } from '../platform/web/page-query.js';
import { dryerOf, lineOf } from '../plant/plant-facts.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { holdPage } from './hold.page.js';
import { findHold, holdPage as holdsBefore, type HoldLine } from './holds.js';
import { holdsPage } from './holds.page.js';

@Controller('holds')
export class HoldController {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: PageQuery): Promise<VNode> {
    const page = pageOf(query);
    const { items, next } = listed(await holdsBefore(this.reader, viewer.actor.siteId, page), page);
    return holdsPage({ viewer, holds: items, next });
  }

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const hold = await findHold(this.reader, viewer.actor.siteId, id);
    return holdPage({ viewer, hold, subjectCode: await this.codeOf(hold) });
  }

  /** Numbers of things of later rooms are theirs to know; the thread takes an id too. */
  private async codeOf(hold: HoldLine): Promise<string> {
    if (hold.scopeKind === 'dryer-run') return (await dryerRunOf(this.reader, hold.scopeId)).number;
    if (hold.scopeKind === 'dryer-shift') return (await dryerOf(this.reader, hold.scopeId)).code;
    if (hold.scopeKind === 'packing-shift') return (await lineOf(this.reader, hold.scopeId)).code;
    if (hold.scopeKind !== 'bulk-bag') return hold.scopeId;
    const [bag] = await bagsOf(this.reader, [hold.scopeId]);
    return bag?.number ?? hold.scopeId;
  }
}
