import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { AskedLines, isOf, waitingSamples } from '../../laboratory/asked-lines.js';
import { ReportResult } from '../../laboratory/report-result.js';
import { TakeSampleForm } from '../../laboratory/sample.form.js';
import { findSample, resultsOfSamples } from '../../laboratory/samples.js';
import { TakeSample } from '../../laboratory/take-sample.js';
import { refuseUnusual } from '../../laboratory/usual-range.js';
import { dryersOfSite } from '../../plant/named-things.js';
import { May, mayDo } from '../../platform/actor.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { EnterResultForm, reportOf } from './results.form.js';
import { enterResultPage, resultsPage } from './results.page.js';
import { sampleNewPage } from './sample-new.page.js';

type Answer = Promise<VNode | TakenForScript | null>;

@ApiExcludeController()
@Controller('quality')
export class ResultsController {
  constructor(
    private readonly reportResult: ReportResult,
    private readonly takeSample: TakeSample,
    private readonly heavy: HeavyReads,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get('results')
  @May('read')
  async list(@Looking() viewer: Viewer): Promise<VNode> {
    const waiting = await this.heavy.snapshot((from) => waitingSamples(from, viewer.actor.siteId));
    return resultsPage({ viewer, waiting });
  }

  @Get('results/:id')
  @May('read')
  one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.page(viewer, id, null);
  }

  @Post('results/:id')
  @May('report-results')
  report(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: EnterResultForm,
      times: ['analysedAt'],
      timeZone: viewer.timeZone,
      act: async (form) => {
        const report = reportOf(form, id);
        await refuseUnusual(this.reader, viewer.actor.siteId, { ...report, isSure: form.isSure ?? false });
        const answer = await this.reportResult.execute(asked, report);
        return { ...answer, next: await this.nextOf(viewer.actor.siteId, id) };
      },
      next: ({ next }) => next,
      says: ({ sampleNumber, verdict }) => ({ code: `said-result-${verdict}`, facts: { sample: sampleNumber } }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  @Get('samples/new')
  @May('take-samples')
  takingPage(@Looking() viewer: Viewer): Promise<VNode> {
    return this.taking(viewer, null);
  }

  @Post('samples/new')
  @May('take-samples')
  take(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Answer {
    const pages = mayDo(viewer.actor.roles, 'report-results') ? '/quality/results' : '/samples';
    return sent.take({
      form: TakeSampleForm,
      times: ['fromAt', 'takenAt'],
      timeZone: viewer.timeZone,
      act: (form) => this.takeSample.execute(asked, form),
      next: ({ id }) => `${pages}/${id}`,
      says: ({ number }) => ({ code: 'said-sample', facts: { sample: number } }),
      again: (trouble) => this.taking(viewer, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const sample = await findSample(this.reader, viewer.actor.siteId, id);
    const results = (await resultsOfSamples(this.reader, [sample.id])).get(sample.id) ?? [];
    const asked = await new AskedLines(this.reader).of(sample);
    return enterResultPage({ viewer, sample, results, asked, trouble });
  }

  private async taking(viewer: Viewer, trouble: FormTrouble | null): Promise<VNode> {
    return sampleNewPage({ viewer, dryers: await dryersOfSite(this.reader, viewer.actor.siteId), trouble });
  }

  /** The same sample while it lacks something, else the list of those that wait. */
  private async nextOf(siteId: string, id: string): Promise<string> {
    const sample = await findSample(this.reader, siteId, id);
    const results = (await resultsOfSamples(this.reader, [sample.id])).get(sample.id) ?? [];
    const asked = await new AskedLines(this.reader).of(sample);
    const isMissing = asked.some((line) => !results.some((result) => !result.isVoid && isOf(result, line)));
    return isMissing ? `/quality/results/${sample.id}` : '/quality/results';
  }
}
