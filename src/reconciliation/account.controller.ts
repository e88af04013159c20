import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../platform/actor.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { accountView } from './account.page.js';
import { accountList } from './account-list.page.js';
import { accountPage, accountWithCorrections } from './accounts.js';

@ApiExcludeController()
@Controller('accounts')
export class AccountController {
  constructor(
    private readonly heavy: HeavyReads,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() page: PageQuery): Promise<VNode> {
    const limit = page.limit ?? 50;
    const accounts = await accountPage(this.reader, viewer.actor.siteId, { before: page.before ?? null, limit });
    const older = accounts.length === limit ? (accounts.at(-1)?.id ?? null) : null;
    return accountList({ viewer, accounts, older });
  }

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const signed = await this.heavy.snapshot((from) => accountWithCorrections(from, viewer.actor.siteId, id));
    return accountView({ viewer, signed });
  }
}
