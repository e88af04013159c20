import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { CorrectHandSample } from '../../fill-weight/correct-hand-sample.js';
import { sampleOf } from '../../fill-weight/hand-samples.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { BadForm } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { scalesOf } from '../line/line-rows.js';
import { correctedNets, CorrectSampleOnPageForm } from './hand-sample-page.form.js';
import { sampleCorrectionPage } from './sample-correction.page.js';

/** A hand sample was recorded wrongly, or never weighed: what that changes is shown first. */
@ApiExcludeController()
@Controller('hand-samples/:id/correct')
export class SampleCorrectionController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly ripple: CorrectionRipple,
    private readonly correctSample: CorrectHandSample,
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
    const { netDecigrams } = await sampleOf(this.reader, viewer.actor.siteId, id);
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: CorrectSampleOnPageForm, back: `/hand-samples/${id}/correct` },
      correct: (asking, form) => {
        const { why, reason } = form;
        const right = { netDecigrams: correctedNets(form, netDecigrams), scaleId: form.scaleId ?? null };
        if (why === 'incorrect-data' && right.netDecigrams === null && right.scaleId === null) {
          throw new BadForm([{ field: 'net0', code: 'correction-without-change', facts: {} }]);
        }
        return this.correctSample.execute(asking, id, { why, reason, ...right });
      },
      next: ({ sample, runId }) => (sample === null ? `/runs/${runId}/hand-samples` : `/hand-samples/${sample.id}`),
      says: () => ({ code: 'said-corrected', facts: {} }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId } = viewer.actor;
    const sample = await sampleOf(this.reader, siteId, id);
    return sampleCorrectionPage({ viewer, sample, scales: await scalesOf(this.reader, siteId), trouble });
  }
}
