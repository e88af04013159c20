import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { CorrectEmpty } from '../../hopper/correct-empty.js';
import { currentPeriod, periodOf, type PeriodRow } from '../../hopper/hopper-period-rows.js';
import type { Asked } from '../../journal/entry-draft.js';
import { hopperOf } from '../../plant/plant-facts.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { sayLocally } from '../../platform/web/local-text.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { colleaguesOf } from '../line/line-rows.js';
import { emptyCorrectionPage, emptyNotLastPage } from './correction.page.js';
import { EmptyCorrectionForm } from './empty-correction.form.js';

/** The proven empty that ended a period was at another time, left another residue, or was none. */
@ApiExcludeController()
@Controller('hopper-periods/:id/correct-empty')
export class EmptyCorrectionController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly ripple: CorrectionRipple,
    private readonly correctEmpty: CorrectEmpty,
  ) {}

  @Get()
  @May('prove-empty')
  show(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.page(viewer, id, null);
  }

  @Post()
  @May('prove-empty')
  correct(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode | TakenForScript | null> {
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: EmptyCorrectionForm, times: ['provenAt'] },
      correct: (asking, form) => this.correctEmpty.execute(asking, id, form),
      back: `/hopper-periods/${id}/correct-empty`,
      next: () => `/hopper-periods/${id}`,
      says: () => ({ code: 'said-corrected', facts: {} }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId, personId } = viewer.actor;
    const period = await this.endedPeriod(siteId, id);
    const { code: hopper } = await hopperOf(this.reader, period.hopperId);
    const facts = { hopper, at: period.endedAt, kilograms: kilogramsText(period.endResidueGrams ?? 0) };
    const says = sayLocally('correction-empty-is', facts, viewer.timeZone);
    const begun = await currentPeriod(this.reader, period.hopperId);
    if (begun !== null && begun.number !== period.number + 1) {
      return emptyNotLastPage({ viewer, hopper, hopperId: period.hopperId, says });
    }
    const people = await colleaguesOf(this.reader, siteId, personId);
    return emptyCorrectionPage({
      viewer,
      hopper,
      says,
      people,
      action: `/hopper-periods/${id}/correct-empty`,
      trouble,
    });
  }

  /** @throws {NotFound} `proven-empty`, where the period goes on */
  private async endedPeriod(siteId: string, id: string): Promise<PeriodRow> {
    const period = await periodOf(this.reader, id);
    if (period.siteId !== siteId || period.endedAt === null) throw new NotFound('proven-empty', id);
    return period;
  }
}
