import { Controller, Get, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { CountLoosePacks } from '../../packing/count-loose-packs.js';
import { CountPacks } from '../../packing/count-packs.js';
import { RemoveSugar } from '../../packing/remove-sugar.js';
import { May, MayBeQueued } from '../../platform/actor.js';
import { Refusal } from '../../platform/refusal.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { LineDesk } from './line-desk.js';
import { LineCountForm, LineRemovalForm } from './line.form.js';
import { scalesOf } from './line-rows.js';
import { countPage, removalPage } from './removal.page.js';

/** Sugar that leaves otherwise than in accepted packs, and the counter of the line. */
@ApiExcludeController()
@Controller('line/:lineId')
export class LineRemovalController {
  constructor(
    private readonly desk: LineDesk,
    private readonly ripple: CorrectionRipple,
    private readonly removeSugar: RemoveSugar,
    private readonly countPacks: CountPacks,
    private readonly countLoose: CountLoosePacks,
  ) {}

  @Get('removals')
  @May('run-line')
  removals(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.removalAgain(viewer, lineId, null);
  }

  @Post('removals')
  @May('run-line')
  @MayBeQueued()
  remove(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: LineRemovalForm, times: ['removedAt'], use: 'tablet' },
      mayChangeEarlier: ({ removedAt }) => this.desk.isOfEarlier(viewer, lineId, removedAt),
      correct: (asking, form) => this.removeSugar.execute(asking, { ...form, lineId }),
      back: `/line/${lineId}/removals`,
      next: () => `/line/${lineId}`,
      says: ({ grams }) => ({ code: 'said-removed', facts: { kilograms: kilogramsText(grams) } }),
      again: (trouble) => this.removalAgain(viewer, lineId, trouble),
    });
  }

  @Get('count')
  @May('count-packs')
  async count(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return countPage({ viewer, at: await this.desk.line(viewer, lineId) });
  }

  @Post('count')
  @May('count-packs')
  @MayBeQueued()
  enterCount(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: LineCountForm, times: ['countedAt'], use: 'tablet' },
      mayChangeEarlier: ({ countedAt }) => this.desk.isOfEarlier(viewer, lineId, countedAt),
      correct: async (asking, form) => this.record(asking, form, await this.runOf(viewer, lineId, asked, form)),
      back: `/line/${lineId}/count`,
      next: () => `/line/${lineId}`,
      says: () => ({ code: 'said-counted', facts: {} }),
      again: async (trouble) => countPage({ viewer, at: await this.desk.line(viewer, lineId), trouble }),
    });
  }

  private async record(
    asked: Asked,
    { packCount, loosePackCount, countedAt, reason }: LineCountForm,
    run: string,
  ): Promise<unknown> {
    const counted = { packCount, countedAt: countedAt ?? null, ...(reason == null ? {} : { reason }) };
    return loosePackCount == null
      ? this.countPacks.execute(asked, run, counted)
      : this.countLoose.execute(asked, run, { ...counted, loosePackCount });
  }

  /** The run that was counted: for an earlier time, and for what waited on a device, the run of then, whatever runs now. */

  private async runOf(
    viewer: Viewer,
    lineId: string,
    { happening }: Asked,
    { countedAt }: LineCountForm,
  ): Promise<string> {
    const when = { happening: happening ?? null, statedAt: countedAt ?? null };
    const { run, line, now } = await this.desk.lineThen(viewer, lineId, when);
    if (run === null) throw new Refusal('no-run-then', { line: line.code, at: now });
    return run.number;
  }

  private async removalAgain(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const at = await this.desk.line(viewer, lineId);
    return removalPage({ viewer, at, scales: await scalesOf(this.desk.reader, viewer.actor.siteId), trouble });
  }
}
