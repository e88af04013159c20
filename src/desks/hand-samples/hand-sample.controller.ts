import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { dueHandSample } from '../../fill-weight/hand-plan/due-hand-sample.js';
import { sampleOf, samplesRead } from '../../fill-weight/hand-samples.js';
import { WeighHandSample } from '../../fill-weight/weigh-hand-sample.js';
import type { Asked } from '../../journal/entry-draft.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import { findRun, runOfLineAt } from '../../packing/packing-runs.js';
import { May, MayBeQueued } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { lineNow, scalesOf } from '../line/line-rows.js';
import { HandSampleOnPageForm, netsOfPage, SampleSizeQuery } from './hand-sample-page.form.js';
import { handSamplePage } from './hand-sample.page.js';
import { sampleResultPage } from './sample-result.page.js';
import { samplesOfRunPage } from './samples-of-run.page.js';

/** Where nothing is planned a page asks for so many packs. Our own value, no source. */
const usualPackCount = 5;

/** Packs that are weighed by hand beside the line, and what they say. */
@ApiExcludeController()
@Controller()
export class HandSampleController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly weighHandSample: WeighHandSample,
  ) {}

  @Get('line/:lineId/hand-samples')
  @May('weigh-packs')
  ask(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Query() query: SampleSizeQuery,
  ): Promise<VNode> {
    return this.page(viewer, lineId, { packs: query.packs ?? null, trouble: null });
  }

  @Post('line/:lineId/hand-samples')
  @May('weigh-packs')
  @MayBeQueued()
  weigh(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: HandSampleOnPageForm,
      times: ['weighedAt'],
      timeZone: viewer.timeZone,
      act: async (form) => {
        const netDecigrams = netsOfPage(form);
        const { scaleId, weighedAt = null, reason = null } = form;
        const run = await this.runThen(viewer, lineId, weighedAt ?? asked.happening?.at ?? null);
        return this.weighHandSample.execute(asked, { run: run.id, netDecigrams, scaleId, weighedAt, reason });
      },
      next: ({ id }) => `/hand-samples/${id}`,
      says: ({ samplePackCount }) => ({ code: 'said-sample-weighed', facts: { count: samplePackCount } }),
      again: (trouble) => this.page(viewer, lineId, { packs: sizeEntered(trouble), trouble }),
    });
  }

  @Get('hand-samples/:id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return sampleResultPage({ viewer, sample: await sampleOf(this.reader, viewer.actor.siteId, id) });
  }

  @Get('runs/:id/hand-samples')
  @May('read')
  async ofRun(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const run = await findRun(this.reader, viewer.actor.siteId, id);
    return samplesOfRunPage({ viewer, run, samples: await samplesRead(this.reader, run) });
  }

  /** The run whose packs were weighed: for what waited on a device the run of then, whatever runs now. */
  private async runThen(viewer: Viewer, lineId: string, statedAt: string | null): Promise<RunRow> {
    const now = this.clock.now();
    const at = statedAt === null || statedAt > now ? now : statedAt;
    const { line, run } = await lineNow(this.reader, viewer.actor.siteId, { lineId, now });
    const then = at === now ? run : await runOfLineAt(this.reader, lineId, at);
    if (then === null) throw new Refusal('no-run-then', { line: line.code, at });
    return then;
  }

  private async page(
    viewer: Viewer,
    lineId: string,
    { packs, trouble }: { readonly packs: number | null; readonly trouble: FormTrouble | null },
  ): Promise<VNode> {
    const { siteId } = viewer.actor;
    const now = this.clock.now();
    const at = await lineNow(this.reader, siteId, { lineId, now });
    const due = await dueHandSample(this.reader, lineId, now);
    return handSamplePage({
      ...{ viewer, at, due, trouble },
      packCount: packs ?? due?.plan.packCount ?? usualPackCount,
      scales: await scalesOf(this.reader, siteId),
      samples: at.run === null ? [] : await samplesRead(this.reader, at.run),
    });
  }
}

/** The page is shown again with as many fields as it had. */
function sizeEntered({ entered }: FormTrouble): number | null {
  const packs = Number(entered['packs']);
  return Number.isInteger(packs) && packs >= 2 && packs <= 20 ? packs : null;
}
