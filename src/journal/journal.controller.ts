import { Controller, Get, Inject, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { journalPage } from './journal-entries.js';
import { JournalQuery } from './journal.form.js';
import { journalListPage } from './journal.page.js';

@ApiExcludeController()
@Controller('journal')
export class JournalController {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: JournalQuery): Promise<VNode> {
    const limit = query.limit ?? 100;
    const entries = await journalPage(this.reader, viewer.actor.siteId, { before: query.before ?? null, limit });
    return journalListPage({
      viewer,
      entries,
      older: entries.length === limit ? (entries.at(-1)?.sequence ?? null) : null,
    });
  }
}
