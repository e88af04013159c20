import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { Acting } from '../platform/web/request.js';
import { entriesAbout, journalHeadOf, journalPage, type EntryLine } from './journal-entries.js';
import { JournalQuery } from './journal.form.js';

const entryExample = {
  sequence: 4711,
  id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10',
  recordedAt: '2026-03-12T07:41:03.412Z',
  occurredAt: '2026-03-12T07:40:00.000Z',
  action: 'tip-bag',
  subjectKind: 'bulk-bag',
  subjectId: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a11',
};

@ApiTags('journal')
@Controller('api/journal')
export class JournalApi {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'The journal, newest entry first' })
  @ApiOkResponse({ schema: { example: { head: 'a1…', items: [entryExample], next: 4711 } } })
  async list(
    @Acting() actor: Actor,
    @Query() query: JournalQuery,
  ): Promise<{ head: string | null; items: readonly EntryLine[]; next: number | null }> {
    const limit = query.limit ?? 50;
    const items = await journalPage(this.reader, actor.siteId, { before: query.before ?? null, limit });
    const next = items.length === limit ? (items.at(-1)?.sequence ?? null) : null;
    return { head: await journalHeadOf(this.reader, actor.siteId), items, next };
  }

  @Get(':kind/:id')
  @May('read')
  @ApiOperation({ summary: 'What the journal says of one thing' })
  async about(
    @Acting() actor: Actor,
    @Param('kind') kind: string,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<{ items: readonly EntryLine[] }> {
    if (!/^[a-z-]{1,40}$/.test(kind)) throw new NotFound('thing', kind);
    return { items: await entriesAbout(this.reader, actor.siteId, { kind, id: id.toLowerCase() }) };
  }
}
