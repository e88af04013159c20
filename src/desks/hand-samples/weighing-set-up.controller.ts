import { Controller, Get, Inject, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { EndHandPlan } from '../../fill-weight/hand-plan/end-hand-plan.js';
import { handPlansOf } from '../../fill-weight/hand-plan/hand-plans.js';
import { SetHandPlan } from '../../fill-weight/hand-plan/set-hand-plan.js';
import { SetSilence } from '../../fill-weight/silence/set-silence.js';
import { watchedWeighers } from '../../fill-weight/silence/silence-settings.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { formatsOf, linesOf } from '../line/line-rows.js';
import { EndPlanOnPageForm, PlanOnPageForm, SilenceOnPageForm } from './weighing-set-up.form.js';
import { weighingSetUpPage, type WeighingForm } from './weighing-set-up.page.js';

const path = '/set-up/weighing';

/** How often packs are weighed by hand, and how long a pack weigher may be silent. */
@ApiExcludeController()
@Controller('set-up/weighing')
export class WeighingSetUpController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly setHandPlan: SetHandPlan,
    private readonly endHandPlan: EndHandPlan,
    private readonly setSilence: SetSilence,
  ) {}

  @Get()
  @May('plan-checks')
  show(@Looking() viewer: Viewer): Promise<VNode> {
    return this.page(viewer, null, null);
  }

  @Post('plan')
  @May('plan-checks')
  plan(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: PlanOnPageForm,
      timeZone: viewer.timeZone,
      act: (form) => this.setHandPlan.execute(asked, form),
      next: () => path,
      says: () => ({ code: 'said-weighing-set', facts: {} }),
      again: (trouble) => this.page(viewer, 'plan', trouble),
    });
  }

  @Post('end')
  @May('plan-checks')
  end(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: EndPlanOnPageForm,
      timeZone: viewer.timeZone,
      act: ({ plan, reason }) => {
        const [lineId = '', formatId] = plan.split('/');
        return this.endHandPlan.execute(asked, { lineId, formatId: formatId ?? null, reason });
      },
      next: () => path,
      says: () => ({ code: 'said-weighing-ended', facts: {} }),
      again: (trouble) => this.page(viewer, 'end', trouble),
    });
  }

  @Post('silence')
  @May('plan-checks')
  silence(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: SilenceOnPageForm,
      timeZone: viewer.timeZone,
      act: ({ weigherId, silentAfterMinutes = null }) =>
        this.setSilence.execute(asked, weigherId, { silentAfterMinutes }),
      next: () => path,
      says: () => ({ code: 'said-weighing-set', facts: {} }),
      again: (trouble) => this.page(viewer, 'silence', trouble),
    });
  }

  private async page(viewer: Viewer, of: WeighingForm | null, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId } = viewer.actor;
    return weighingSetUpPage({
      ...{ viewer, of, trouble },
      plans: await handPlansOf(this.reader, siteId),
      weighers: await watchedWeighers(this.reader, siteId),
      lines: await linesOf(this.reader, siteId),
      formats: await formatsOf(this.reader, siteId),
    });
  }
}
