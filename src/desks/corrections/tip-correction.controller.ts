import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { CorrectTip } from '../../hopper/correct-tip.js';
import { CorrectTipForm } from '../../hopper/tip.form.js';
import { tipToCorrect } from '../../hopper/tips.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { sayLocally } from '../../platform/web/local-text.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { tipCorrectionPage } from './correction.page.js';

/** A tip was of another bag or time, or was none. */
@ApiExcludeController()
@Controller('tips/:id/correct')
export class TipCorrectionController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly ripple: CorrectionRipple,
    private readonly correctTip: CorrectTip,
  ) {}

  @Get()
  @May('correct')
  show(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.page(viewer, id, null);
  }

  @Post()
  @May('correct')
  async correct(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode | TakenForScript | null> {
    const { periodId } = await tipToCorrect(this.reader, viewer.actor.siteId, id);
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: CorrectTipForm, times: ['openedAt', 'offAt'] },
      correct: (asking, form) => this.correctTip.execute(asking, id, form),
      back: `/tips/${id}/correct`,
      next: () => `/hopper-periods/${periodId}`,
      says: () => ({ code: 'said-corrected', facts: {} }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const tip = await tipToCorrect(this.reader, viewer.actor.siteId, id);
    const bag = tip.bagNumber ?? tip.binNumber ?? '?';
    const facts = { bag, kilograms: kilogramsText(tip.netGrams), at: tip.openedAt };
    const says = sayLocally('correction-tip-is', facts, viewer.timeZone);
    return tipCorrectionPage({ viewer, bag, says, action: `/tips/${id}/correct`, trouble });
  }
}
