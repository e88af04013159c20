import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../journal/entry-draft.js';
import { ownPath } from '../people/own-path.js';
import { namesOf } from '../people/people.js';
import { May } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Asking, Looking, type Viewer } from '../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../platform/web/sent-form.js';
import { interruptionPage } from './interruption.page.js';
import { daysBack, interruptedHours, topCauses } from './interruptions.js';
import { InterruptionQuery, ShelveOnPageForm } from './open-point.form.js';
import { shelfTroublePage } from './shelf-trouble.page.js';
import { ShelvePoint } from './shelve-point.js';

const daysShown = 7;

@ApiExcludeController()
@Controller()
export class InterruptionController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly shelvePoint: ShelvePoint,
  ) {}

  @Get('interruptions')
  @May('read-interruptions')
  async show(@Looking() viewer: Viewer, @Query() query: InterruptionQuery): Promise<VNode> {
    const days = query.days ?? daysShown;
    const since = daysBack(this.clock.now(), days);
    const hours = await interruptedHours(this.reader, viewer.actor.siteId, since);
    const causes = await topCauses(this.reader, viewer.actor.siteId, since);
    const names = await namesOf(
      this.reader,
      hours.map(({ personId }) => personId),
    );
    return interruptionPage({ viewer, days, hours, causes, names });
  }

  @Post('open-points/:id/shelf')
  @May('answer-open-points')
  shelve(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: ShelveOnPageForm,
      timeZone: viewer.timeZone,
      act: async (form) => ({ ...(await this.shelvePoint.execute(asked, id, { minutes: form.minutes })), ...form }),
      next: ({ back }) => ownPath(back),
      says: ({ untilAt }) => ({ code: 'shelved-until', facts: { at: untilAt } }),
      again: (trouble) => shelfTroublePage({ viewer, trouble }),
    });
  }
}
