import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import type { VNode } from 'preact';
import { findHold, holdPage as holdsBefore } from '../disposition/holds.js';
import { namesOfHeld } from '../pallets/held-things.js';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { holdPage } from './hold.page.js';
import { holdsPage } from './holds.page.js';

/** Holds as they are read: what each is on is named, which takes all rooms that make such things. */
@Controller('holds')
export class HoldController {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: PageQuery): Promise<VNode> {
    const page = pageOf(query);
    const { items, next } = listed(await holdsBefore(this.reader, viewer.actor.siteId, page), page);
    const names = await namesOfHeld(
      this.reader,
      items.map(({ scopeKind: kind, scopeId }) => ({ kind, id: scopeId })),
    );
    return holdsPage({ viewer, holds: items.map((hold) => ({ hold, name: names.get(hold.scopeId) ?? null })), next });
  }

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const hold = await findHold(this.reader, viewer.actor.siteId, id);
    const names = await namesOfHeld(this.reader, [{ kind: hold.scopeKind, id: hold.scopeId }]);
    return holdPage({ viewer, hold, name: names.get(hold.scopeId) ?? null });
  }
}
