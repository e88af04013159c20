import { Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { EndDryerRun } from '../../drying/end-dryer-run.js';
import { StartDryerRun } from '../../drying/start-dryer-run.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { EndRunForm, StartRunForm } from './dryer.form.js';
import { DryerPages } from './dryer-pages.js';

type Taken = Promise<VNode | TakenForScript | null>;

/** The dryer operator's desk. Weights and numbers come from the server, so nothing here waits on a device. */
@ApiExcludeController()
@Controller('dryer')
export class DryerController {
  constructor(
    private readonly startRun: StartDryerRun,
    private readonly endRun: EndDryerRun,
    private readonly pages: DryerPages,
  ) {}

  @Get()
  @May('read')
  all(@Looking() viewer: Viewer, @Query('all') all?: string): Promise<VNode> {
    return this.pages.all(viewer, all !== undefined);
  }

  @Get(':dryerId')
  @May('read')
  one(
    @Looking() viewer: Viewer,
    @Param('dryerId', ParseUUIDPipe) dryerId: string,
    @Query() query: Record<string, unknown>,
  ): Promise<VNode> {
    return this.pages.one(viewer, dryerId, null, query);
  }

  @Post(':dryerId/runs')
  @May('fill-bags')
  start(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('dryerId', ParseUUIDPipe) dryerId: string,
  ): Taken {
    return sent.take({
      form: StartRunForm,
      timeZone: viewer.timeZone,
      act: (form) => this.startRun.execute(asked, { dryerId, gradeId: form.gradeId }),
      next: () => `/dryer/${dryerId}`,
      says: ({ number }) => ({ code: 'dryer-run-started', facts: { run: number } }),
      again: (why) => this.pages.one(viewer, dryerId, { of: 'run', why }),
    });
  }

  @Post(':dryerId/run-ends')
  @May('fill-bags')
  end(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('dryerId', ParseUUIDPipe) dryerId: string,
  ): Taken {
    return sent.take({
      form: EndRunForm,
      timeZone: viewer.timeZone,
      act: (form) => this.endRun.execute(asked, { run: form.run }),
      next: () => `/dryer/${dryerId}`,
      says: ({ number }) => ({ code: 'dryer-run-over', facts: { run: number } }),
      again: (why) => this.pages.one(viewer, dryerId, { of: 'run', why }),
    });
  }
}
