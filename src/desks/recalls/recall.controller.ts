import { Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { pageOf } from '../../platform/web/listed.js';
import { PageQuery } from '../../platform/web/page-query.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { AnswerRecall } from '../../recalls/answer-recall.js';
import { MarkRecall } from '../../recalls/mark-recall.js';
import { MarkRecallForm } from '../../recalls/recall.form.js';
import { openRecalls, recallPage } from '../../recalls/recalls.js';
import { recallLines } from './recall-lines.js';
import { recallListPage } from './recall-list.page.js';
import { AnswerOnPageForm } from './recall-page.form.js';
import { RecallPages } from './recall-pages.js';

type Answer = Promise<VNode | TakenForScript | null>;

@ApiExcludeController()
@Controller('quality/recalls')
export class RecallController {
  constructor(
    private readonly pages: RecallPages,
    private readonly markRecall: MarkRecall,
    private readonly answerRecall: AnswerRecall,
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: PageQuery): Promise<VNode> {
    const { siteId } = viewer.actor;
    const page = pageOf(query);
    const read = await this.heavy.snapshot(async (from) => {
      const all = await recallPage(from, siteId, page);
      return {
        open: await recallLines(from, await openRecalls(from, siteId)),
        signed: await recallLines(
          from,
          all.filter(({ signedAt }) => signedAt !== null),
        ),
        older: all.length < page.limit ? null : (all.at(-1)?.id ?? null),
      };
    });
    return recallListPage({ viewer, ...read, now: this.clock.now() });
  }

  @Get(':id')
  @May('read')
  one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.pages.page(viewer, id, null);
  }

  @Get(':id/notices/:customerId')
  @May('read')
  notice(
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Param('customerId', ParseUUIDPipe) customerId: string,
  ): Promise<VNode> {
    return this.pages.notice(viewer, id, customerId);
  }

  @Post(':id/marks')
  @May('run-recalls')
  mark(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    let of = 'clock-stopped';
    return sent.take({
      form: MarkRecallForm,
      timeZone: viewer.timeZone,
      act: (form) => {
        of = form.mark;
        return this.markRecall.execute(asked, id, form);
      },
      next: () => `/quality/recalls/${id}`,
      says: ({ mark }) => ({ code: `said-mark-${mark}`, facts: {} }),
      again: (trouble) => this.pages.again(viewer, id, of, trouble),
    });
  }

  @Post(':id/answers')
  @May('run-recalls')
  answer(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: AnswerOnPageForm,
      timeZone: viewer.timeZone,
      act: (form) => this.answerRecall.execute(asked, id, form),
      next: () => `/quality/recalls/${id}`,
      says: () => ({ code: 'said-recall-answered', facts: {} }),
      again: (trouble) => this.pages.again(viewer, id, 'answer', trouble),
    });
  }
}
