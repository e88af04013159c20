import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { siteOf } from '../plant/plant-facts.js';
import { May } from '../platform/actor.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { speakOnPaper } from '../platform/sentences/language.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { PaperPageQuery } from '../platform/web/paper-page.query.js';
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
    const asked = pageOf(page);
    const { items: accounts, next: older } = listed(await accountPage(this.reader, viewer.actor.siteId, asked), asked);
    return accountList({ viewer, accounts, older });
  }

  @Get(':id')
  @May('read')
  async one(
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Query() query: PaperPageQuery,
  ): Promise<VNode> {
    const signed = await this.heavy.snapshot((from) => accountWithCorrections(from, viewer.actor.siteId, id));
    const { paperLanguage } = await siteOf(this.reader, viewer.actor.siteId);
    if (query.for === 'paper') speakOnPaper(paperLanguage);
    return accountView({ viewer, signed, paperLanguage });
  }
}
