import { Controller, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { findRun } from '../../packing/packing-runs.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { RunSights } from '../run-weights/run-sights.js';
import { runWeightsPage } from '../run-weights/run-weights.page.js';
import { IssueWeightReport } from './issue-weight-report.js';
import { WeightReportForm } from './weight-report.form.js';

/** Where the page of a run's weights sends for a report. */
@ApiExcludeController()
@Controller('runs')
export class WeightReportController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly sights: RunSights,
    private readonly issueReport: IssueWeightReport,
  ) {}

  @Post(':id/weights/report')
  @May('weigh-packs')
  issue(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: WeightReportForm,
      timeZone: viewer.timeZone,
      act: () => this.issueReport.execute(asked, id),
      next: ({ paperId }) => `/papers/${paperId}/file`,
      again: async () => {
        const run = await findRun(this.reader, viewer.actor.siteId, id);
        return runWeightsPage({ viewer, sight: await this.sights.of(run), chosen: null });
      },
    });
  }
}
