import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { ExplainPoint } from '../../open-points/explain-point.js';
import { ExplainPointForm } from '../../open-points/open-point.form.js';
import { openPointOf } from '../../open-points/open-points.js';
import { namesOf } from '../../people/people.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { pointPage } from './point.page.js';

@ApiExcludeController()
@Controller('quality/points')
export class PointController {
  constructor(
    private readonly explainPoint: ExplainPoint,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get(':id')
  @May('read')
  one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.page(viewer, id, null);
  }

  @Post(':id')
  @May('answer-open-points')
  answer(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: ExplainPointForm,
      timeZone: viewer.timeZone,
      act: (form) => this.explainPoint.execute(asked, id, form),
      next: () => '/quality',
      says: () => ({ code: 'said-answered', facts: {} }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const point = await openPointOf(this.reader, viewer.actor.siteId, id);
    const names = await namesOf(
      this.reader,
      [point.personId, point.endedBy].flatMap((one) => one ?? []),
    );
    return pointPage({ viewer, point, names, trouble });
  }
}
