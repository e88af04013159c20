import { Controller, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { SetUpPages } from './set-up-pages.js';
import { AddDryer } from '../../plant/add-dryer.js';
import { AddHopper } from '../../plant/add-hopper.js';
import { AddScale } from '../../plant/add-scale.js';
import { milligramsOf } from './read-steps.js';
import { HopperStepForm, NamedStepForm, ScaleStepForm } from './set-up.form.js';

type Taken = Promise<VNode | TakenForScript | null>;

/** Scales, dryers and hoppers. */
@ApiExcludeController()
@Controller('set-up')
export class MachineStepsController {
  constructor(
    private readonly addScale: AddScale,
    private readonly addDryer: AddDryer,
    private readonly addHopper: AddHopper,
    private readonly pages: SetUpPages,
  ) {}

  @Post('scales')
  @May('set-up-plant')
  scale(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: ScaleStepForm,
      timeZone: viewer.timeZone,
      act: ({ intervalKilograms, errorKilograms, ...rest }) => {
        const intervalMilligrams = milligramsOf('intervalKilograms', intervalKilograms, 6);
        const maximumPermissibleErrorMilligrams = milligramsOf('errorKilograms', errorKilograms, 6);
        return this.addScale.execute(asked, { ...rest, intervalMilligrams, maximumPermissibleErrorMilligrams });
      },
      next: () => '/set-up/scales',
      says: () => ({ code: 'set-up-added', facts: {} }),
      again: this.pages.again(viewer, 'scales', 'scales'),
    });
  }

  @Post('dryers')
  @May('set-up-plant')
  dryer(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: NamedStepForm,
      timeZone: viewer.timeZone,
      act: (form) => this.addDryer.execute(asked, form),
      next: () => '/set-up/dryers',
      says: () => ({ code: 'set-up-added', facts: {} }),
      again: this.pages.again(viewer, 'dryers', 'dryers'),
    });
  }

  @Post('hoppers')
  @May('set-up-plant')
  hopper(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: HopperStepForm,
      timeZone: viewer.timeZone,
      act: (form) => this.addHopper.execute(asked, form),
      next: () => '/set-up/hoppers',
      says: () => ({ code: 'set-up-added', facts: {} }),
      again: this.pages.again(viewer, 'hoppers', 'hoppers'),
    });
  }
}
