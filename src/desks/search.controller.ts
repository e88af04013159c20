import { Controller, Get, Query, Redirect } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May, type Actor } from '../platform/actor.js';
import { Acting, Looking, type Viewer } from '../platform/web/request.js';
import { firstDeskOf } from '../platform/web/ways.js';
import { threadPage } from '../tracing/thread.page.js';
import { choiceKey, FindThread } from './find-thread.js';
import { SearchQuery } from './search.form.js';
import { searchBox, searchPage } from './search.page.js';

@ApiExcludeController()
@Controller()
export class SearchController {
  constructor(private readonly threads: FindThread) {}

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
  async thread(@Looking() viewer: Viewer, @Query() query: SearchQuery): Promise<VNode> {
    const code = query.code ?? '';
    if (code === '') return searchPage({ viewer, code, choices: null });
    const asked = { code, localTime: query.at ?? null, meant: query.meant ?? null };
    const found = await this.threads.find(viewer.actor.siteId, asked);
    if ('thread' in found) return threadPage({ viewer, thread: found.thread, searchBox: searchBox(code) });
    const choices = found.choices.map((choice) => ({ ...choice, meant: choiceKey(choice) }));
    return searchPage({ viewer, code, choices });
  }
}
