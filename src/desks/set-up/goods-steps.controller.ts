import { Controller, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { SetUpPages } from './set-up-pages.js';
import { AddBagType } from '../../plant/add-bag-type.js';
import { AddPackFormat } from '../../plant/add-pack-format.js';
import { ChangeBagType } from '../../plant/change-bag-type.js';
import { SetUpGrade } from '../../plant/set-up-grade.js';
import { limitsOf, milligramsOf } from './read-steps.js';
import { BagTypeStepForm, FormatStepForm, GradeStepForm } from './set-up.form.js';

type Taken = Promise<VNode | TakenForScript | null>;

/** Types of bags, grades, pack formats, and what a full bag usually weighs. */
@ApiExcludeController()
@Controller('set-up')
export class GoodsStepsController {
  constructor(
    private readonly addBagType: AddBagType,
    private readonly changeBagType: ChangeBagType,
    private readonly setUpGrade: SetUpGrade,
    private readonly addFormat: AddPackFormat,
    private readonly pages: SetUpPages,
  ) {}

  @Post('bag-types')
  @May('set-up-plant')
  bagType(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: BagTypeStepForm,
      timeZone: viewer.timeZone,
      act: ({ insteadOf, ...form }) =>
        insteadOf === undefined || insteadOf === null
          ? this.addBagType.execute(asked, form)
          : this.changeBagType.execute(asked, insteadOf, form),
      next: () => '/set-up/bag-types',
      says: () => ({ code: 'set-up-added', facts: {} }),
      again: this.pages.again(viewer, 'bag-types', 'bag-types'),
    });
  }

  @Post('grades')
  @May('set-up-plant')
  grade(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: GradeStepForm,
      timeZone: viewer.timeZone,
      act: (form) => {
        const { name, code, tippingRule } = form;
        return this.setUpGrade.execute(asked, { name, code, tippingRule, lines: limitsOf(form) });
      },
      next: () => '/set-up/grades',
      says: () => ({ code: 'set-up-added', facts: {} }),
      again: this.pages.again(viewer, 'grades', 'grades'),
    });
  }

  @Post('formats')
  @May('set-up-plant')
  format(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: FormatStepForm,
      timeZone: viewer.timeZone,
      act: ({ lowerGrams, upperGrams, ...form }) => {
        const assumedLowerMilligrams = milligramsOf('lowerGrams', lowerGrams, 3);
        const assumedUpperMilligrams = milligramsOf('upperGrams', upperGrams, 3);
        return this.addFormat.execute(asked, { ...form, assumedLowerMilligrams, assumedUpperMilligrams });
      },
      next: () => '/set-up/formats',
      says: () => ({ code: 'set-up-added', facts: {} }),
      again: this.pages.again(viewer, 'formats', 'formats'),
    });
  }
}
