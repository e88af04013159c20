import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { peopleOf, personOf } from './people.js';
import { peoplePage, personPage } from './person.page.js';

@ApiExcludeController()
@Controller('people')
export class PersonController {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() page: PageQuery): Promise<VNode> {
    const asked = pageOf(page);
    const { items: people, next: older } = listed(await peopleOf(this.reader, viewer.actor.siteId, asked), asked);
    return peoplePage({ viewer, people, older });
  }

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return personPage({ viewer, person: await personOf(this.reader, viewer.actor.siteId, id) });
  }
}
