import { Controller, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { Asked } from '../../journal/entry-draft.js';
import { SitePaperLanguageForm } from '../../plant/paper-language.form.js';
import { SetPaperLanguage } from '../../plant/set-paper-language.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { SetUpPages } from './set-up-pages.js';

/** The language of papers that go to no customer: a second form of the site's step. */
@ApiExcludeController()
@Controller('set-up')
export class PapersStepController {
  constructor(
    private readonly setPaperLanguage: SetPaperLanguage,
    private readonly pages: SetUpPages,
  ) {}

  @Post('site/papers')
  @May('set-up-plant')
  papers(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer) {
    return sent.take({
      form: SitePaperLanguageForm,
      timeZone: viewer.timeZone,
      act: (form) => this.setPaperLanguage.forSite(asked, form),
      next: () => '/set-up/site',
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: this.pages.again(viewer, 'site', 'site/papers'),
    });
  }
}
