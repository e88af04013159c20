import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import type { BagRow } from '../drying/bulk-bags.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { RecordChange } from '../journal/record-change.js';
import { laboratoryStandingOf } from '../laboratory/bag-results.js';
import { resultsChangedJob, type ResultsChanged } from '../laboratory/results-changed.js';
import { bagsOfSample } from '../laboratory/samples.js';
import { clearPoints, raisePoint } from '../open-points/raise-point.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { isUsed } from './is-used.js';
import { standingsOf } from './standings.js';

const cause = 'results-outside-of-bag';

/** What is to be said about the bags of a sample. */
interface Found {
  readonly toRaise: readonly { readonly bag: BagRow; readonly outside: string }[];
  readonly toClear: readonly BagRow[];
}

/**
 * After results of a sample came, changed or went: a point for quality on each bag with a result outside that is not
 * rejected, or of which sugar has gone on; cleared where no result is outside any more.
 */
@Injectable()
export class WatchResults implements OnModuleInit {
  constructor(
    private readonly jobs: JobRunner,
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  onModuleInit(): void {
    this.jobs.handle(resultsChangedJob, (payload) => this.look(payload as ResultsChanged));
  }

  /** May run again for the same sample: what is open already is not opened twice, and then nothing is recorded. */
  async look(changed: ResultsChanged): Promise<void> {
    const seen = await this.findOut(this.reader, changed);
    if (seen.toRaise.length + seen.toClear.length === 0) return;
    const actor = { siteId: changed.siteId, personId: null, deviceId: null, roles: [] };
    const asked = { actor, route: `job ${resultsChangedJob}`, key: null };
    await this.changes.run(asked, {}, async (tx, change) => {
      const found = await this.findOut(tx, changed);
      const about = { siteId: changed.siteId, cause, at: change.recordedAt };
      for (const { bag, outside } of found.toRaise) {
        const facts = { bag: bag.number, outside };
        const subject = { kind: 'bulk-bag', id: bag.id };
        await raisePoint(tx, { ...about, id: this.ids.next(), facts, subject, role: 'quality-officer' });
      }
      for (const bag of found.toClear) {
        const subject = { kind: 'bulk-bag', id: bag.id };
        await clearPoints(tx, { ...about, nextId: () => this.ids.next(), subject, personId: null });
      }
      const raised = found.toRaise.map(({ bag }) => bag.id);
      const cleared = found.toClear.map(({ id }) => id);
      return {
        answer: null,
        entry: {
          action: 'watch-results',
          subject: { kind: 'sample', id: changed.sampleId },
          touches: [...raised, ...cleared].map((id) => ({ kind: 'bulk-bag', id })),
          after: { raised, cleared },
        },
      };
    });
  }

  private async findOut(from: ReadFrom, changed: ResultsChanged): Promise<Found> {
    const bags = await bagsOfSample(from, changed);
    const standings = await standingsOf(from, bags);
    const open = await bagsWithPoint(from, bags);
    const toRaise: { bag: BagRow; outside: string }[] = [];
    const toClear: BagRow[] = [];
    for (const bag of bags) {
      const { gradeId, decision } = standings.get(bag.id) ?? { gradeId: bag.intendedGradeId, decision: null };
      const { outside, outsideResults } = await laboratoryStandingOf(from, bag, gradeId);
      const isOfSample = outsideResults.some(({ sampleId }) => sampleId === changed.sampleId);
      const mustBeSeen = isOfSample && (decision?.verdict !== 'rejected' || isUsed(bag));
      if (mustBeSeen && !open.has(bag.id)) toRaise.push({ bag, outside: outside.join(', ') });
      if (outside.length === 0 && open.has(bag.id)) toClear.push(bag);
    }
    return { toRaise, toClear };
  }
}

async function bagsWithPoint(from: ReadFrom, bags: readonly BagRow[]): Promise<ReadonlySet<string>> {
  const rows = await inChunks(
    bags.map(({ id }) => id),
    (chunk) => from.sql<{ bagId: string }>`
      SELECT p."subject_id" AS "bagId" FROM "open_point" p
      WHERE p."subject_kind" = 'bulk-bag' AND p."subject_id" IN (${() => chunk}) AND p."cause" = ${cause}
        AND p."voided_by" IS NULL
        AND NOT EXISTS (SELECT 1 FROM "open_point_end" e WHERE e."point_id" = p."id" AND e."voided_by" IS NULL)`,
  );
  return new Set(rows.map(({ bagId }) => bagId));
}
