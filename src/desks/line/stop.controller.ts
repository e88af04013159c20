import { Controller, Get, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { CorrectStop } from '../../packing/correct-stop.js';
import { stopOf } from '../../packing/packing-runs.js';
import { StartLineAgain } from '../../packing/start-line-again.js';
import { StopLine } from '../../packing/stop-line.js';
import { May, MayBeQueued } from '../../platform/actor.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { LineDesk } from './line-desk.js';
import { LineStopForm, RunsAgainForm, StopReasonForm } from './line.form.js';
import { shiftPage } from './shift.page.js';
import { stopPage } from './stop.page.js';

/** The line stands, why, and runs again: each with one touch. */
@ApiExcludeController()
@Controller('line/:lineId/stops')
export class LineStopController {
  constructor(
    private readonly desk: LineDesk,
    private readonly stopLine: StopLine,
    private readonly correctStop: CorrectStop,
    private readonly startAgain: StartLineAgain,
  ) {}

  @Post()
  @May('run-line')
  @MayBeQueued()
  stop(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineStopForm,
      timeZone: viewer.timeZone,
      act: async ({ run, stopReason }) => {
        const stood = { run: await this.runThen(viewer, lineId, { run, asked }), stopReason: stopReason ?? 'not-said' };
        return this.stopLine.execute(asked, stood);
      },
      next: ({ id }) => `/line/${lineId}/stops/${id}`,
      says: () => ({ code: 'said-stopped', facts: {} }),
      again: async (trouble) => shiftPage({ viewer, view: await this.desk.shift(viewer, lineId, null), trouble }),
    });
  }

  @Get(':stopId')
  @May('run-line')
  one(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('stopId', ParseUUIDPipe) stopId: string,
  ): Promise<VNode> {
    return this.page(viewer, { lineId, stopId }, null);
  }

  /** The reason takes the place of what was not said, as a correction: both stay readable. */
  @Post(':stopId/reason')
  @May('run-line')
  reason(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('stopId', ParseUUIDPipe) stopId: string,
  ) {
    return sent.take({
      form: StopReasonForm,
      timeZone: viewer.timeZone,
      act: ({ stopReason }) =>
        this.correctStop.execute(asked, stopId, {
          why: 'incorrect-data',
          reason: 'the reason was said later',
          stopReason,
        }),
      next: ({ stopId: newId }) => (newId === null ? `/line/${lineId}` : `/line/${lineId}/stops/${newId}`),
      says: () => ({ code: 'said-reason', facts: {} }),
      again: (trouble) => this.page(viewer, { lineId, stopId }, trouble),
    });
  }

  @Post(':stopId/again')
  @May('run-line')
  @MayBeQueued()
  again(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('stopId', ParseUUIDPipe) stopId: string,
  ) {
    return sent.take({
      form: RunsAgainForm,
      times: ['startedAgainAt'],
      timeZone: viewer.timeZone,
      act: (form) => this.startAgain.execute(asked, stopId, form),
      next: () => `/line/${lineId}`,
      says: ({ minutes }) => ({ code: 'said-runs-again', facts: { minutes } }),
      again: (trouble) => this.page(viewer, { lineId, stopId }, trouble),
    });
  }

  /** A page that was open without network may show a run that was closed since: the line stood in the run of then. */
  private async runThen(viewer: Viewer, lineId: string, shown: { readonly run: string; readonly asked: Asked }) {
    const happening = shown.asked.happening ?? null;
    if (happening === null) return shown.run;
    return (await this.desk.lineThen(viewer, lineId, { happening })).run?.number ?? shown.run;
  }

  private async page(
    viewer: Viewer,
    { lineId, stopId }: { readonly lineId: string; readonly stopId: string },
    trouble: FormTrouble | null,
  ): Promise<VNode> {
    const at = await this.desk.line(viewer, lineId);
    const stop = await stopOf(this.desk.reader, viewer.actor.siteId, stopId);
    return stopPage({ viewer, at, stop, trouble });
  }
}
