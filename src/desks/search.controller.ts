import { Controller, Get, Inject, Query, Redirect, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { May, type Actor } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Looking, type Viewer } from '../platform/web/request.js';
import { firstDeskOf } from '../platform/web/ways.js';
import { threadPage } from '../tracing/thread.page.js';
import { FindThread } from './find-thread.js';
import { pageOfPaperCode } from './paper-forms/paper-forms.js';
import { SearchQuery } from './search.form.js';
import { fitsText } from './finding-text.js';
import { searchBox, searchPage } from './search.page.js';

@ApiExcludeController()
@Controller()
export class SearchController {
  constructor(
    private readonly threads: FindThread,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  home(@Looking() viewer: Viewer): VNode {
    return searchPage({ viewer, code: '', choices: null });
  }

  /** Where somebody begins after signing in: at the desk of the role. */
  @Get('home')
  @May('read')
  @Redirect()
  firstDesk(@Acting() actor: Actor): { url: string; statusCode: number } {
    return { url: firstDeskOf(actor.roles), statusCode: 303 };
  }

  @Get('thread')
  @May('read')
  async thread(
    @Looking() viewer: Viewer,
    @Query() query: SearchQuery,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode | null> {
    const code = query.code ?? '';
    if (code === '') return searchPage({ viewer, code, choices: null });
    const { siteId } = viewer.actor;
    const sheet = await pageOfPaperCode(this.reader, siteId, { text: code, now: this.clock.now() });
    if (sheet !== null) {
      void reply.status(303).header('Location', sheet);
      return null;
    }
    const asked = { code, localTime: query.at ?? null, meant: query.meant ?? null, isDrawn: true };
    const found = await this.threads.find(siteId, asked);
    if ('complaint' in found) {
      void reply.status(303).header('Location', `/quality/complaints/${found.complaint.id}`);
      return null;
    }
    if ('recall' in found) {
      void reply.status(303).header('Location', `/quality/recalls/${found.recall.id}`);
      return null;
    }
    if ('choices' in found) return searchPage({ viewer, code, choices: found.choices });
    // Links of pages name a thing by its id, which nobody reads.
    const { thread, fits, ribbons = [], dossier = null } = found;
    const { id, name } = thread.subject;
    return threadPage({
      viewer,
      thread,
      fits: fitsText(fits),
      ribbons,
      dossier,
      searchBox: searchBox(code === id ? name : code),
    });
  }
}
