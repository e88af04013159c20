import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { toWhole } from '../platform/database/stored-values.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { compared } from './bag-results.js';
import { judgeResult, type ResultVerdict } from './judge-result.js';
import { refuseImpossible } from './property-range.js';
import { Result } from './result.entity.js';
import { leaveResultsChanged } from './results-changed.js';
import type { ReportResultForm } from './sample.form.js';
import { findSample, type SampleRow } from './samples.js';

export interface ReportedResult {
  readonly id: string;
  readonly sampleNumber: string;
  readonly isRetest: boolean;
  readonly verdict: ResultVerdict;
}

/**
 * The laboratory reports one property of a sample by one method. A property that no specification asks for is kept,
 * and the answer says so.
 * Refusals: `result-already-there`, `no-result-to-retest`, `result-out-of-range`, `result-before-sample`; not found: sample.
 */
@Injectable()
export class ReportResult {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: ReportResultForm): Promise<ReportedResult> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.analysedAt ?? null, change.recordedAt, reason);
      const sample = await findSample(tx, asked.actor.siteId, form.sample);
      const { property, method, amount } = form;
      refuseImpossible(property, amount);
      refuseBeforeSample(sample, occurredAt);
      const retestNumber = await retestNumberOf(tx, sample, form);
      const id = this.ids.next();
      await keepResult(tx, sample, { id, property, method, amount, retestNumber, analysedAt: occurredAt });
      await leaveResultsChanged(tx, sample, { id: this.ids.next(), at: change.recordedAt });
      const verdict = await judgeResult(tx, sample, compared(form));
      return {
        answer: { id, sampleNumber: sample.number, isRetest: retestNumber > 0, verdict },
        entry: {
          action: 'report-result',
          subject: { kind: 'sample', id: sample.id },
          touches: [{ kind: 'result', id }],
          after: { id, property, method, amount, retestNumber, verdict },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

/** @throws {Refusal} `result-before-sample` */
export function refuseBeforeSample(sample: SampleRow, analysedAt: string): void {
  if (analysedAt >= sample.takenAt) return;
  throw new Refusal('result-before-sample', { sample: sample.number, takenAt: sample.takenAt, analysedAt });
}

/** A second result is a retest only where it says so: else it is the first one sent again. */
async function retestNumberOf(tx: Tx, sample: SampleRow, form: ReportResultForm): Promise<number> {
  const { property, method } = form;
  const [row] = await tx.sql<{ last: number | string | null }>`
    SELECT MAX("retest_number") AS "last" FROM "result"
    WHERE "sample_id" = ${sample.id} AND "property" = ${property} AND "method" = ${method} AND "voided_by" IS NULL`;
  const last = row?.last ?? null;
  const facts = { sample: sample.number, property, method };
  if (form.isRetest === true) {
    if (last === null) throw new Refusal('no-result-to-retest', facts);
    return toWhole(last) + 1;
  }
  if (last !== null) throw new Refusal('result-already-there', facts);
  return 0;
}

/** Of two first results at once one may stand. */
async function keepResult(tx: Tx, sample: SampleRow, result: Omit<Result, 'sampleId' | 'voidedBy'>): Promise<void> {
  try {
    await tx.insert(Result, { ...result, sampleId: sample.id, voidedBy: null });
  } catch (error) {
    const { property, method } = result;
    if (isTakenKey(error)) throw new Refusal('result-already-there', { sample: sample.number, property, method });
    throw error;
  }
}
