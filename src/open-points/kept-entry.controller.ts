import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../platform/web/sent-form.js';
import { ExplainPoint } from './explain-point.js';
import { keptEntryOf } from './kept-entries.js';
import { keptEntryPage } from './kept-entry.page.js';
import { ExplainPointForm } from './open-point.form.js';

/** What was kept because it could not be taken: read here, and dealt with by saying what really happened. */
@ApiExcludeController()
@Controller('kept-entries')
export class KeptEntryController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly explainPoint: ExplainPoint,
  ) {}

  @Get(':id')
  @May('read')
  show(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.page(viewer, id, null);
  }

  @Post(':id')
  @May('answer-open-points')
  async deal(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode | TakenForScript | null> {
    const { pointId } = await keptEntryOf(this.reader, viewer.actor.siteId, id);
    if (pointId === null) throw new NotFound('open-point', id);
    return sent.take({
      form: ExplainPointForm,
      timeZone: viewer.timeZone,
      act: (form) => this.explainPoint.execute(asked, pointId, form),
      next: () => '/open-points',
      says: () => ({ code: 'kept-entry-closed', facts: {} }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    return keptEntryPage({ viewer, entry: await keptEntryOf(this.reader, viewer.actor.siteId, id), trouble });
  }
}
