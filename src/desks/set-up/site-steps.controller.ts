import { Controller, Inject, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { SetUpPages } from './set-up-pages.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { ChangeSite } from '../../plant/change-site.js';
import { siteOf } from '../../plant/plant-facts.js';
import { SetRuleSet } from '../../plant/set-rule-set.js';
import { SetShiftPattern } from '../../plant/set-shift-pattern.js';
import { checkPointsOf, shiftsOf } from './read-steps.js';
import { RiskLimitsStepForm, ShiftsStepForm, SiteStepForm, VehicleCheckStepForm } from './set-up.form.js';

type Taken = Promise<VNode | TakenForScript | null>;

/** The site with its numbers, its shifts, and what it is checked by. */
@ApiExcludeController()
@Controller('set-up')
export class SiteStepsController {
  constructor(
    private readonly changeSite: ChangeSite,
    private readonly setShifts: SetShiftPattern,
    private readonly setRules: SetRuleSet,
    private readonly pages: SetUpPages,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Post('site')
  @May('set-up-plant')
  site(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: SiteStepForm,
      timeZone: viewer.timeZone,
      act: async (form) => {
        const { ssccExtensionDigit } = await siteOf(this.reader, viewer.actor.siteId);
        return this.changeSite.execute(asked, { ...form, ssccExtensionDigit });
      },
      next: () => '/set-up/shifts',
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: this.pages.again(viewer, 'site', 'site'),
    });
  }

  @Post('shifts')
  @May('set-up-plant')
  shifts(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: ShiftsStepForm,
      timeZone: viewer.timeZone,
      act: async (form) => {
        const { productionDayStart } = await siteOf(this.reader, viewer.actor.siteId);
        return this.setShifts.execute(asked, { shifts: shiftsOf(form, productionDayStart) });
      },
      next: () => '/set-up/scales',
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: this.pages.again(viewer, 'shifts', 'shifts'),
    });
  }

  @Post('rules/vehicle-check')
  @May('set-up-plant')
  vehicleCheck(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: VehicleCheckStepForm,
      timeZone: viewer.timeZone,
      act: ({ points }) => {
        const form = { kind: 'vehicle-check', checkPoints: checkPointsOf(points) };
        return this.setRules.execute(asked, form, { onlyFirst: true });
      },
      next: () => '/set-up/rules',
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: this.pages.again(viewer, 'rules', 'rules/vehicle-check'),
    });
  }

  @Post('rules/vehicle-check/later')
  @May('decide')
  laterVehicleCheck(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: VehicleCheckStepForm,
      timeZone: viewer.timeZone,
      act: ({ points }) => this.setRules.execute(asked, { kind: 'vehicle-check', checkPoints: checkPointsOf(points) }),
      next: () => '/set-up/rules',
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: this.pages.again(viewer, 'rules', 'rules/vehicle-check/later'),
    });
  }

  @Post('rules/risk-limits')
  @May('set-up-plant')
  riskLimits(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: RiskLimitsStepForm,
      timeZone: viewer.timeZone,
      act: (form) => this.setRules.execute(asked, { kind: 'tip-at-risk', ...form }, { onlyFirst: true }),
      next: () => '/set-up/rules',
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: this.pages.again(viewer, 'rules', 'rules/risk-limits'),
    });
  }

  @Post('rules/risk-limits/later')
  @May('decide')
  laterRiskLimits(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: RiskLimitsStepForm,
      timeZone: viewer.timeZone,
      act: (form) => this.setRules.execute(asked, { kind: 'tip-at-risk', ...form }),
      next: () => '/set-up/rules',
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: this.pages.again(viewer, 'rules', 'rules/risk-limits/later'),
    });
  }
}
