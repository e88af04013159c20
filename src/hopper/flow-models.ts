import { defaultFlowModel, type FlowModel } from '../core/hopper-flow/flow-model.js';
import type { Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { ModelKind } from './flow-model.form.js';

/** A choice of how a hopper is taken to flow, with the trial that it rests on. */
export interface ModelRow {
  readonly id: string;
  readonly hopperId: string;
  readonly kind: ModelKind;
  readonly trialId: string | null;
  readonly trialNumber: number | null;
  readonly zoneCount: number | null;
  readonly zoneCountStandard: string | null;
  readonly holdUpGrams: number | null;
  readonly holdUpStandardGrams: number | null;
  readonly reason: string | null;
  readonly validFrom: Instant;
  readonly personId: string | null;
}

const modelSelect = (): string => `
  SELECT m."id", m."hopper_id" AS "hopperId", m."kind", m."trial_id" AS "trialId", t."number" AS "trialNumber",
    m."zone_count" AS "zoneCount", m."zone_count_standard" AS "zoneCountStandard",
    m."hold_up_grams" AS "holdUpGrams", m."hold_up_standard_grams" AS "holdUpStandardGrams", m."reason",
    m."valid_from" AS "validFrom", m."person_id" AS "personId"
  FROM "hopper_model" m LEFT JOIN "tracer_trial" t ON t."id" = m."trial_id" WHERE m."voided_by" IS NULL`;

/** What was chosen for a hopper and in force at an instant; null: nothing was, so it is first in, first out. */
export async function modelInForce(from: ReadFrom, hopperId: string, at: Instant): Promise<ModelRow | null> {
  const row = onlyRow(
    await from.sql<ModelRow>`
      ${modelSelect} AND m."hopper_id" = ${hopperId} AND m."valid_from" <= ${at}
      ORDER BY m."valid_from" DESC LIMIT 1`,
  );
  return row === null ? null : whole(row);
}

/** Every good choice for a hopper, the last first. */
export async function modelsOfHopper(from: ReadFrom, hopperId: string): Promise<readonly ModelRow[]> {
  const rows = await from.sql<ModelRow>`
    ${modelSelect} AND m."hopper_id" = ${hopperId} ORDER BY m."valid_from" DESC LIMIT 50`;
  return rows.map(whole);
}

/** @throws {NotFound} `hopper-model`, also for one that was withdrawn */
export async function modelOf(from: ReadFrom, modelId: string): Promise<ModelRow> {
  const row = onlyRow(await from.sql<ModelRow>`${modelSelect} AND m."id" = ${modelId}`);
  if (row === null) throw new NotFound('hopper-model', modelId);
  return whole(row);
}

function whole(row: ModelRow): ModelRow {
  const { holdUpGrams, holdUpStandardGrams } = row;
  return {
    ...row,
    holdUpGrams: holdUpGrams === null ? null : toWhole(holdUpGrams),
    holdUpStandardGrams: holdUpStandardGrams === null ? null : toWhole(holdUpStandardGrams),
  };
}

/** A choice in the shape that the core takes. */
export function asFlowModel(row: ModelRow | null): FlowModel {
  if (row === null || row.kind === 'first-in-first-out') return defaultFlowModel;
  if (row.kind === 'pour-and-drain') return { kind: row.kind };
  return {
    kind: row.kind,
    zones: { zoneCount: row.zoneCount ?? 0, holdUpGrams: row.holdUpGrams ?? 0 },
    origin: {
      trialId: row.trialId ?? '',
      holdUpStandardGrams: row.holdUpStandardGrams ?? 0,
      zoneCountStandard: Number(row.zoneCountStandard),
    },
  };
}
