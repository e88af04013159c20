import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { CorrectCoderChange } from '../../packing/correct-coder-change.js';
import { CorrectCoderChangeForm } from '../../packing/correction.form.js';
import { runOf } from '../../packing/packing-runs.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { sayLocally } from '../../platform/web/local-text.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { codeCorrectionPage } from './correction.page.js';
import { coderChangeOf } from './facts-on-run.js';

/** What a coder printed, or from which pack on, was recorded wrongly: packs are of another lot. */
@ApiExcludeController()
@Controller('codes/:id/correct')
export class CodeCorrectionController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly ripple: CorrectionRipple,
    private readonly correctCoderChange: CorrectCoderChange,
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
    const { runId } = await coderChangeOf(this.reader, viewer.actor.siteId, id);
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: CorrectCoderChangeForm, times: ['changedAt'] },
      correct: (asking, form) => this.correctCoderChange.execute(asking, id, form),
      back: `/codes/${id}/correct`,
      next: () => `/runs/${runId}`,
      says: () => ({ code: 'said-corrected', facts: {} }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const { runId, code, firstPack, changedAt } = await coderChangeOf(this.reader, viewer.actor.siteId, id);
    const { number: run } = await runOf(this.reader, runId);
    const facts = { code, run, packCount: countText(firstPack), at: changedAt };
    const says = sayLocally('correction-code-is', facts, viewer.timeZone);
    return codeCorrectionPage({ viewer, code, run, says, action: `/codes/${id}/correct`, trouble });
  }
}
