import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { CorrectCount } from '../../packing/correct-count.js';
import { CorrectFilmUse } from '../../packing/correct-film-use.js';
import { CorrectCountForm, CorrectFilmUseForm } from '../../packing/correction.form.js';
import { findRun, runOf } from '../../packing/packing-runs.js';
import { countPage } from '../../packing/run-lists.js';
import { May, mayDo } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { listed, pageOf } from '../../platform/web/listed.js';
import { sayLocally } from '../../platform/web/local-text.js';
import { PageQuery } from '../../platform/web/page-query.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { countCorrectionPage, filmCorrectionPage } from './correction.page.js';
import { countOf, filmUseOf } from './facts-on-run.js';
import { runCountsPage } from './run-counts.page.js';

/** The counts of a run, and what of them and of its film was recorded wrongly. */
@ApiExcludeController()
@Controller()
export class RunCorrectionController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly ripple: CorrectionRipple,
    private readonly correctCount: CorrectCount,
    private readonly correctFilmUse: CorrectFilmUse,
  ) {}

  @Get('runs/:id/counts')
  @May('read')
  async counts(
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Query() query: PageQuery,
  ): Promise<VNode> {
    const run = await findRun(this.reader, viewer.actor.siteId, id);
    const page = pageOf(query);
    const { items, next } = listed(await countPage(this.reader, run.id, page), page);
    return runCountsPage({ viewer, run, counts: items, older: next, mayCorrect: mayDo(viewer.actor.roles, 'correct') });
  }

  @Get('counts/:id/correct')
  @May('correct')
  showCount(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.countPage(viewer, id, null);
  }

  @Post('counts/:id/correct')
  @May('correct')
  async count(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode | TakenForScript | null> {
    const { runId } = await countOf(this.reader, viewer.actor.siteId, id);
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: CorrectCountForm, back: `/counts/${id}/correct` },
      correct: (asking, form) => this.correctCount.execute(asking, id, form),
      next: () => `/runs/${runId}/counts`,
      says: () => ({ code: 'said-corrected', facts: {} }),
      again: (trouble) => this.countPage(viewer, id, trouble),
    });
  }

  @Get('film-uses/:id/correct')
  @May('correct')
  showFilm(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.filmPage(viewer, id, null);
  }

  @Post('film-uses/:id/correct')
  @May('correct')
  async film(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode | TakenForScript | null> {
    const { runId } = await filmUseOf(this.reader, viewer.actor.siteId, id);
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: CorrectFilmUseForm, back: `/film-uses/${id}/correct` },
      correct: (asking, form) => this.correctFilmUse.execute(asking, id, form),
      next: () => `/runs/${runId}`,
      says: () => ({ code: 'said-corrected', facts: {} }),
      again: (trouble) => this.filmPage(viewer, id, trouble),
    });
  }

  private async countPage(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const { runId, packCount, countedAt } = await countOf(this.reader, viewer.actor.siteId, id);
    const { number } = await runOf(this.reader, runId);
    const facts = { packCount: countText(packCount), at: countedAt, run: number };
    const says = sayLocally('correction-count-is', facts, viewer.timeZone);
    return countCorrectionPage({ viewer, run: number, says, action: `/counts/${id}/correct`, trouble });
  }

  private async filmPage(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const { runId, code, firstPack, fittedAt } = await filmUseOf(this.reader, viewer.actor.siteId, id);
    const { number } = await runOf(this.reader, runId);
    const facts = { film: code, packCount: countText(firstPack), at: fittedAt, run: number };
    const says = sayLocally('correction-film-is', facts, viewer.timeZone);
    return filmCorrectionPage({ viewer, film: code, run: number, says, action: `/film-uses/${id}/correct`, trouble });
  }
}
