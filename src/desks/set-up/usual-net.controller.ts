import { Controller, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { SetUsualNet } from '../../plant/set-usual-net.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { SetUpPages } from './set-up-pages.js';
import { UsualNetStepForm } from './set-up.form.js';

/** What a full bag of a grade usually weighs. */
@ApiExcludeController()
@Controller('set-up/grades')
export class UsualNetController {
  constructor(
    private readonly setUsualNet: SetUsualNet,
    private readonly pages: SetUpPages,
  ) {}

  @Post('usual-nets')
  @May('set-up-plant')
  set(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: UsualNetStepForm,
      timeZone: viewer.timeZone,
      act: (form) => this.setUsualNet.execute(asked, form),
      next: () => '/set-up/grades',
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: this.pages.again(viewer, 'grades', 'grades/usual-nets'),
    });
  }
}
