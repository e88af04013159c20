import { Controller, Get, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { NotFound, Refusal } from '../../platform/refusal.js';
import { formTroubleOf, type FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import type { Ripple } from '../../tracing/ripple.js';
import { LineDesk } from './line-desk.js';
import { UndoForm } from './undo.form.js';
import { UndoLast, type LastEntry } from './undo-last.js';
import { undoPage } from './undo.page.js';

/** One's own last entry within ten minutes: did it happen? Then it stays. */
@ApiExcludeController()
@Controller('line/:lineId/undo')
export class LineUndoController {
  constructor(
    private readonly desk: LineDesk,
    private readonly undo: UndoLast,
    private readonly ripple: CorrectionRipple,
  ) {}

  @Get()
  @May('run-line')
  show(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.page(viewer, lineId, null);
  }

  @Post()
  @May('run-line')
  answer(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: UndoForm,
      timeZone: viewer.timeZone,
      act: async ({ sequence, happened }) => {
        if (happened === 'no') await this.undo.execute(asked, sequence);
        return happened;
      },
      next: () => `/line/${lineId}`,
      says: (happened) => ({ code: happened === 'no' ? 'said-undone' : 'said-stays', facts: {} }),
      again: (trouble) => this.page(viewer, lineId, trouble),
    });
  }

  private async page(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const at = await this.desk.line(viewer, lineId);
    const found = await this.lastOrWhyNot(viewer);
    const ripple = found.entry === null ? null : await this.rippleOf(viewer, found.entry);
    return undoPage({ viewer, at, ...found, ripple, trouble: trouble ?? found.whyNot });
  }

  /** Null where it could not be undone now: the answer to the form says why. */
  private async rippleOf({ actor }: Viewer, { sequence }: LastEntry): Promise<Ripple | null> {
    const asked = { actor, route: 'undo', key: null };
    try {
      return await this.ripple.of(asked, (trying) => this.undo.execute(trying, sequence));
    } catch (error) {
      if (error instanceof Refusal || error instanceof NotFound) return null;
      throw error;
    }
  }

  private async lastOrWhyNot(viewer: Viewer): Promise<{ entry: LastEntry | null; whyNot: FormTrouble | null }> {
    try {
      return { entry: await this.undo.last(viewer.actor), whyNot: null };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return { entry: null, whyNot: formTroubleOf(error, {}, viewer.timeZone) };
    }
  }
}
