import { Controller, Get, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { CloseReworkBin } from '../../hopper/close-rework-bin.js';
import { ProveEmpty } from '../../hopper/prove-empty.js';
import { RunDown } from '../../hopper/run-down.js';
import { SeeLevel } from '../../hopper/see-level.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Refusal } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { LineBinForm, LineEmptyForm, LineLevelForm, LineRunDownForm } from './level.form.js';
import { binPage, levelPage, type LevelWay } from './level.page.js';
import { LineDesk } from './line-desk.js';
import { colleaguesOf, scalesOf } from './line-rows.js';

/** What is seen in the hopper: a level, run down, proven empty; and the bin that goes back. */
@ApiExcludeController()
@Controller('line/:lineId')
export class LineLevelController {
  constructor(
    private readonly desk: LineDesk,
    private readonly seeLevel: SeeLevel,
    private readonly runDown: RunDown,
    private readonly proveEmpty: ProveEmpty,
    private readonly closeBin: CloseReworkBin,
  ) {}

  @Get('level')
  @May('run-line')
  level(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.again(viewer, lineId, null);
  }

  @Post('level/seen')
  @May('run-line')
  seen(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineLevelForm,
      timeZone: viewer.timeZone,
      act: async (form) => this.seeLevel.execute(asked, await this.hopperId(viewer, lineId), form),
      next: () => `/line/${lineId}`,
      says: () => ({ code: 'said-level', facts: {} }),
      again: (trouble) => this.again(viewer, lineId, { way: 'seen', trouble }),
    });
  }

  @Post('level/run-down')
  @May('run-line')
  down(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineRunDownForm,
      timeZone: viewer.timeZone,
      act: async (form) => this.runDown.execute(asked, await this.hopperId(viewer, lineId), form),
      next: () => `/line/${lineId}`,
      says: ({ isQuestioned }) => ({ code: isQuestioned ? 'said-run-down-questioned' : 'said-level', facts: {} }),
      again: (trouble) => this.again(viewer, lineId, { way: 'run-down', trouble }),
    });
  }

  @Post('level/empty')
  @May('prove-empty')
  empty(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineEmptyForm,
      timeZone: viewer.timeZone,
      act: async ({ packCount, isFlowStopped, ...form }) => {
        const { run } = await this.desk.line(viewer, lineId);
        const counts = run === null || packCount == null ? null : [{ run: run.number, packCount }];
        const proof = { ...form, counts, isFlowStopped: isFlowStopped ?? false };
        return this.proveEmpty.execute(asked, await this.hopperId(viewer, lineId), proof);
      },
      next: () => `/line/${lineId}`,
      says: ({ isThreadCut }) => ({ code: isThreadCut ? 'said-empty' : 'said-empty-residue', facts: {} }),
      again: (trouble) => this.again(viewer, lineId, { way: 'empty', trouble }),
    });
  }

  @Get('bin')
  @May('run-line')
  bin(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.binAgain(viewer, lineId, null);
  }

  @Post('bin')
  @May('run-line')
  closed(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineBinForm,
      timeZone: viewer.timeZone,
      act: ({ run, fromCount, toCount, ...form }) =>
        this.closeBin.execute(asked, { ...form, parents: [{ run, fromCount, toCount }] }),
      next: () => `/line/${lineId}`,
      says: ({ number }) => ({ code: 'said-bin', facts: { bin: number } }),
      again: (trouble) => this.binAgain(viewer, lineId, trouble),
    });
  }

  private async hopperId(viewer: Viewer, lineId: string): Promise<string> {
    const { hopper, line } = await this.desk.line(viewer, lineId);
    if (hopper === null) throw new Refusal('line-has-no-hopper', { line: line.code });
    return hopper.id;
  }

  private async again(
    viewer: Viewer,
    lineId: string,
    wrong: { readonly way: LevelWay; readonly trouble: FormTrouble } | null,
  ): Promise<VNode> {
    const { siteId, personId } = viewer.actor;
    const { level, ...at } = await this.desk.shift(viewer, lineId, null);
    return levelPage({ viewer, at, level, people: await colleaguesOf(this.desk.reader, siteId, personId), wrong });
  }

  private async binAgain(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const at = await this.desk.line(viewer, lineId);
    return binPage({ viewer, at, scales: await scalesOf(this.desk.reader, viewer.actor.siteId), trouble });
  }
}
