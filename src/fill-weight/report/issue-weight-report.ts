import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { runOf } from '../../packing/packing-runs.js';
import type { Canonical } from '../../platform/canonical-text.js';
import { Ids } from '../../platform/ids.js';
import { issuePaper } from '../../platform/printing/issue-paper.js';
import { PaperRenderers } from '../../platform/printing/paper-renderers.js';
import { NotFound } from '../../platform/refusal.js';
import { siteOf } from '../../plant/plant-facts.js';
import { RunSights } from '../run-weights/run-sights.js';
import { readRunWeights } from '../run-weights/run-weights.js';
import { weightReportFacts } from './weight-report-facts.js';
import { draw, url, weightReportEdition, weightReportEditions, weightReportKind } from './weight-report.paper.js';

export interface WeightReportAnswer {
  readonly paperId: string;
}

/**
 * The weights of a run are written into a report, as they stand now, for somebody who inspects. Each is a paper of its own:
 * a later one may say otherwise, and the earlier one stays as it was.
 * Not found: run.
 */
@Injectable()
export class IssueWeightReport implements OnModuleInit {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    private readonly renderers: PaperRenderers,
    private readonly sights: RunSights,
  ) {}

  onModuleInit(): void {
    for (const edition of weightReportEditions) {
      this.renderers.addBeside(weightReportKind, edition, { draw, url });
    }
  }

  async execute(asked: Asked, runId: string): Promise<WeightReportAnswer> {
    // Which blocks are damaged is found by reading them all: beside the server, and before anybody is kept waiting.
    const unreadable = await this.sights.unreadableOf(runId);
    return this.changes.run(asked, { runId }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const run = await runOf(tx, runId);
      if (run.siteId !== siteId) throw new NotFound('packing-run', runId);
      const site = await siteOf(tx, siteId);
      const weights = await readRunWeights(tx, run);
      const issued = { issuedAt: change.recordedAt, issuedBy: personId };
      const facts = await weightReportFacts(tx, { site, weights, unreadable, ...issued });
      const paperId = this.ids.next();
      await issuePaper(tx, {
        ...{ id: paperId, jobId: this.ids.next(), siteId, kind: weightReportKind, edition: weightReportEdition },
        ...{ number: null, subject: { kind: 'packing-run', id: run.id }, facts: facts as unknown as Canonical },
        ...{ issuedAt: change.recordedAt, personId },
      });
      return {
        answer: { paperId },
        entry: {
          action: 'issue-weight-report',
          subject: { kind: 'packing-run', id: run.id },
          touches: [{ kind: 'paper', id: paperId }],
          after: { paperId, packCount: weights.weighedPackCount },
        },
      };
    });
  }
}
