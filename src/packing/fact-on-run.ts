import type { EntityTarget, ObjectLiteral } from 'typeorm';
import type { Tx } from '../platform/database/unit-of-work.js';
import { BadForm, NotFound } from '../platform/refusal.js';
import { lockRun } from './run-states.js';
import { runOf } from './packing-runs.js';
import type { RunRow } from './packing-run-rows.js';

/** A fact of a run that is to be corrected, void or not, and its run, taken for this unit. */
export async function takeFactOnRun<Row extends ObjectLiteral & { id: string; runId: string }>(
  tx: Tx,
  entity: EntityTarget<Row>,
  asked: { readonly siteId: string; readonly kind: string; readonly id: string },
): Promise<{ fact: Row; run: RunRow }> {
  const fact = await tx.findOne(entity, { id: asked.id } as Partial<Row>);
  if (fact === null) throw new NotFound(asked.kind, asked.id);
  await lockRun(tx, fact.runId);
  const run = await runOf(tx, fact.runId);
  if (run.siteId !== asked.siteId) throw new NotFound(asked.kind, asked.id);
  return { fact, run };
}

/** The right value, which a correction of incorrect data must bring. */
export function neededValue<Value>(field: string, value: Value | null | undefined): Value {
  if (value === null || value === undefined) throw new BadForm([{ field, code: 'field-missing', facts: {} }]);
  return value;
}
