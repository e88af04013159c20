import { Controller, Get, Inject, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { CheckScale } from '../../plant/check-scale.js';
import { scalesAt } from '../../plant/whole-plant.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { CheckHereForm } from './dryer.form.js';
import { scalesPage } from './scales.page.js';

/** The scales, and their check with a known weight. */
@ApiExcludeController()
@Controller('dryer/scales')
export class ScalesController {
  constructor(
    private readonly checkScale: CheckScale,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  show(@Looking() viewer: Viewer): Promise<VNode> {
    return this.page(viewer, null);
  }

  @Post()
  @May('check-scales')
  check(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: CheckHereForm,
      timeZone: viewer.timeZone,
      act: ({ scaleId, knownGrams, shownGrams }) =>
        this.checkScale.execute(asked, { scaleId, deviationMilligrams: (shownGrams - knownGrams) * 1000 }),
      next: () => '/dryer/scales',
      says: ({ passed }) => ({ code: passed ? 'scales-passed' : 'scales-not-passed', facts: {} }),
      again: (trouble) => this.page(viewer, trouble),
    });
  }

  private async page(viewer: Viewer, trouble: FormTrouble | null): Promise<VNode> {
    const scales = await scalesAt(this.reader, viewer.actor.siteId, this.clock.now());
    return scalesPage({ viewer, scales, trouble });
  }
}
