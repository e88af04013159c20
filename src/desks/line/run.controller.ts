import { Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { StartRun } from '../../hopper/start-run.js';
import type { Asked } from '../../journal/entry-draft.js';
import { ChangeCode } from '../../packing/change-code.js';
import { CloseRun } from '../../packing/close-run.js';
import { FitFilm } from '../../packing/fit-film.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import { intendedCodeOf } from '../../packing/printed-codes.js';
import { May } from '../../platform/actor.js';
import { Refusal } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { LineDesk } from './line-desk.js';
import { formatsOf } from './line-rows.js';
import { FilmQuery, LineCloseForm, LineCodeForm, LineFilmForm, LineStartForm } from './run.form.js';
import { closePage, codePage, filmPage, startPage } from './run.page.js';

/** A run from its start to its close: format, code, film. */
@ApiExcludeController()
@Controller('line/:lineId')
export class LineRunController {
  constructor(
    private readonly desk: LineDesk,
    private readonly startRun: StartRun,
    private readonly closeRun: CloseRun,
    private readonly changeCode: ChangeCode,
    private readonly fitFilm: FitFilm,
  ) {}

  @Get('run')
  @May('run-line')
  run(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.runAgain(viewer, lineId, null);
  }

  @Post('run/start')
  @May('run-line')
  start(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineStartForm,
      timeZone: viewer.timeZone,
      act: (form) => this.startRun.execute(asked, { ...form, lineId }),
      next: () => `/line/${lineId}/code`,
      says: ({ number }) => ({ code: 'said-run-started', facts: { run: number } }),
      again: (trouble) => this.runAgain(viewer, lineId, trouble),
    });
  }

  @Post('run/close')
  @May('run-line')
  close(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineCloseForm,
      timeZone: viewer.timeZone,
      act: async (form) => this.closeRun.execute(asked, (await this.open(viewer, lineId)).number, form),
      next: () => `/line/${lineId}`,
      says: ({ number }) => ({ code: 'said-run-closed', facts: { run: number } }),
      again: (trouble) => this.runAgain(viewer, lineId, trouble),
    });
  }

  @Get('code')
  @May('run-line')
  code(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.codeAgain(viewer, lineId, null);
  }

  @Post('code')
  @May('run-line')
  enterCode(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineCodeForm,
      timeZone: viewer.timeZone,
      act: async (form) => this.changeCode.execute(asked, (await this.open(viewer, lineId)).number, form),
      next: () => `/line/${lineId}`,
      says: ({ code, isAsIntended, intendedCode }) =>
        isAsIntended
          ? { code: 'said-code', facts: { code } }
          : { code: 'said-code-other', facts: { code, intended: intendedCode } },
      again: (trouble) => this.codeAgain(viewer, lineId, trouble),
    });
  }

  @Get('film')
  @May('run-line')
  async film(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Query() query: FilmQuery,
  ): Promise<VNode> {
    return filmPage({ viewer, at: await this.desk.line(viewer, lineId), film: query.film ?? '' });
  }

  @Post('film')
  @May('run-line')
  fit(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineFilmForm,
      timeZone: viewer.timeZone,
      act: async (form) => this.fitFilm.execute(asked, (await this.open(viewer, lineId)).number, form),
      next: () => `/line/${lineId}`,
      says: ({ code }) => ({ code: 'said-film', facts: { film: code } }),
      again: async (trouble) => filmPage({ viewer, at: await this.desk.line(viewer, lineId), film: '', trouble }),
    });
  }

  private async open(viewer: Viewer, lineId: string): Promise<RunRow> {
    const { run, line, now } = await this.desk.line(viewer, lineId);
    if (run === null) throw new Refusal('no-run-then', { line: line.code, at: now });
    return run;
  }

  private async runAgain(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const at = await this.desk.line(viewer, lineId);
    if (at.run !== null) return closePage({ viewer, at, trouble });
    return startPage({ viewer, at, formats: await formatsOf(this.desk.reader, viewer.actor.siteId), trouble });
  }

  private async codeAgain(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const at = await this.desk.line(viewer, lineId);
    const intended = at.run === null ? null : await intendedCodeOf(this.desk.reader, at.run, at.now);
    return codePage({ viewer, at, intended, trouble });
  }
}
