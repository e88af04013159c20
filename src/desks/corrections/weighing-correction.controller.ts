import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { spacedBagNumber } from '../../core/identifiers/bag-number.js';
import { CorrectWeighing } from '../../drying/correct-weighing.js';
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
import { scalesOf } from '../line/line-rows.js';
import { WeighingCorrectionForm } from './sugar-correction.form.js';
import { weighingCorrectionPage } from './sugar-correction.page.js';
import { weighingOf } from './sugar-facts.js';

/** A bag's weighing that was recorded wrongly, whoever typed it and wherever the sugar has gone since. */
@ApiExcludeController()
@Controller('bag-weighings/:id/correct')
export class WeighingCorrectionController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly ripple: CorrectionRipple,
    private readonly correctWeighing: CorrectWeighing,
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
    const { bagId } = await weighingOf(this.reader, viewer.actor.siteId, id);
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: WeighingCorrectionForm, times: ['weighedAt'] },
      correct: (asking, form) => this.correctWeighing.execute(asking, id, withWeighedTare(form)),
      back: `/bag-weighings/${id}/correct`,
      next: () => `/bags/${bagId}`,
      says: () => ({ code: 'said-corrected', facts: {} }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId } = viewer.actor;
    const { bagNumber, weighing } = await weighingOf(this.reader, siteId, id);
    const { occasion, grossGrams, tareGrams, netGrams, scaleCode, weighedAt } = weighing;
    const bag = spacedBagNumber(bagNumber);
    const facts = {
      ...{ bag, occasion, scale: scaleCode, at: weighedAt },
      ...{ gross: kilogramsText(grossGrams), tare: kilogramsText(tareGrams), net: kilogramsText(netGrams) },
    };
    const says = sayLocally('correction-weighing-is', facts, viewer.timeZone);
    const scales = await scalesOf(this.reader, siteId);
    return weighingCorrectionPage({ viewer, bag, says, scales, action: `/bag-weighings/${id}/correct`, trouble });
  }
}

/** A tare that is typed here was read, not taken from the bag's type. */
function withWeighedTare(form: WeighingCorrectionForm): WeighingCorrectionForm & { isPresetTare: boolean | null } {
  return { ...form, isPresetTare: form.tareGrams == null ? null : false };
}
