import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { periodAt } from '../../hopper/hopper-period-rows.js';
import type { Asked } from '../../journal/entry-draft.js';
import { CorrectRemoval } from '../../packing/correct-removal.js';
import type { RemovalRow } from '../../packing/packing-run-rows.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { sayLocally } from '../../platform/web/local-text.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { scalesOf } from '../line/line-rows.js';
import { RemovalCorrectionForm } from './sugar-correction.form.js';
import { removalCorrectionPage } from './sugar-correction.page.js';
import { removalOf } from './sugar-facts.js';

/** Rejects, samples and sweepings that were recorded wrongly: what left otherwise moves every pack after it. */
@ApiExcludeController()
@Controller('removals/:id/correct')
export class RemovalCorrectionController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly ripple: CorrectionRipple,
    private readonly correctRemoval: CorrectRemoval,
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
    const next = await this.recordsAround(await removalOf(this.reader, viewer.actor.siteId, id));
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: RemovalCorrectionForm, times: ['removedAt'] },
      correct: (asking, form) => this.correctRemoval.execute(asking, id, form),
      back: `/removals/${id}/correct`,
      next: () => next,
      says: () => ({ code: 'said-corrected', facts: {} }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId } = viewer.actor;
    const { kind, packCount, grams, removedAt, reason, fate } = await removalOf(this.reader, siteId, id);
    const what = say(`removal-kind-${kind}`);
    const facts = {
      ...{ what, kilograms: kilogramsText(grams), packs: packCount, at: removedAt },
      ...{ reason: say(`removal-reason-${reason}`), fate: say(`removal-fate-${fate}`) },
    };
    const says = sayLocally(
      packCount === null ? 'correction-removal-is' : 'correction-removal-of-packs-is',
      facts,
      viewer.timeZone,
    );
    const scales = await scalesOf(this.reader, siteId);
    return removalCorrectionPage({ viewer, what, says, scales, action: `/removals/${id}/correct`, trouble });
  }

  /** Where such a record stands among others: its run, else the hopper period that it left. */
  private async recordsAround({ runId, hopperId, removedAt }: RemovalRow): Promise<string> {
    if (runId !== null) return `/runs/${runId}`;
    const period = hopperId === null ? null : await periodAt(this.reader, hopperId, removedAt);
    return period === null ? '/journal' : `/hopper-periods/${period.id}`;
  }
}
