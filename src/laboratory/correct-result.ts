import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { refuseImpossible } from './property-range.js';
import { refuseBeforeSample } from './report-result.js';
import { Result } from './result.entity.js';
import { leaveResultsChanged } from './results-changed.js';
import type { CorrectResultForm } from './sample.form.js';
import { findSample, type SampleRow } from './samples.js';

/**
 * A result was never measured, or something in it was typed wrong: it becomes void, and a right one takes its place.
 * Refusals: `already-corrected`, `nothing-corrected`, `result-out-of-range`, `result-before-sample`,
 * `result-already-there`; not found: result.
 */
@Injectable()
export class CorrectResult {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, resultId: string, form: CorrectResultForm): Promise<{ id: string | null; sampleId: string }> {
    return this.changes.run(asked, { ...form, resultId }, async (tx, change) => {
      refuseContradiction(form);
      const { old, sample } = await findResult(tx, asked.actor.siteId, resultId);
      const right = form.why === 'did-not-occur' ? null : rightResult(sample, old, form);
      await voidFact(tx, Result, old.id, change);
      const id = right === null ? null : this.ids.next();
      if (right !== null && id !== null) await insertInPlace(tx, { ...right, id });
      await leaveResultsChanged(tx, sample, { id: this.ids.next(), at: change.recordedAt });
      return {
        answer: { id, sampleId: sample.id },
        entry: {
          action: 'correct-result',
          subject: { kind: 'sample', id: sample.id },
          touches: [{ kind: 'result', id: old.id }],
          before: { property: old.property, method: old.method, amount: old.amount },
          after: right === null ? null : { id, property: right.property, method: right.method, amount: right.amount },
          reason: form.reason,
        },
      };
    });
  }
}

async function findResult(tx: Tx, siteId: string, resultId: string): Promise<{ old: Result; sample: SampleRow }> {
  const old = await tx.findOne(Result, { id: resultId });
  if (old === null) throw new NotFound('result', resultId);
  if (old.voidedBy !== null) throw new Refusal('already-corrected', { id: old.id });
  return { old, sample: await findSample(tx, siteId, old.sampleId) };
}

function rightResult(sample: SampleRow, old: Result, form: CorrectResultForm): Omit<Result, 'id'> {
  const given = [form.property, form.method, form.amount, form.analysedAt];
  if (given.every((field) => field === undefined || field === null)) throw new Refusal('nothing-corrected');
  const right = {
    ...old,
    property: form.property ?? old.property,
    method: form.method ?? old.method,
    amount: form.amount ?? old.amount,
    analysedAt: form.analysedAt ?? old.analysedAt,
    voidedBy: null,
  };
  refuseImpossible(right.property, right.amount);
  refuseBeforeSample(sample, right.analysedAt);
  return right;
}

/** Where property or method was wrong, the right place may hold a result already. */
async function insertInPlace(tx: Tx, right: Result): Promise<void> {
  const { property, method, sampleId } = right;
  try {
    await tx.insert(Result, right);
  } catch (error) {
    if (isTakenKey(error)) throw new Refusal('result-already-there', { sample: sampleId, property, method });
    throw error;
  }
}
