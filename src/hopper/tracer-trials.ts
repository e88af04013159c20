import { fitTracerTrial, type TrialFit, type TrialRefused } from '../core/hopper-flow/fit-tracer-trial.js';
import type { TracerTrial as TrialToFit } from '../core/hopper-flow/tracer-trial.js';
import type { Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';

/** A tracer trial as it was recorded, with its bags by number. */
export interface TrialRow {
  readonly id: string;
  readonly siteId: string;
  readonly hopperId: string;
  readonly number: number;
  readonly beforeBagId: string;
  readonly beforeBagNumber: string;
  readonly afterBagId: string;
  readonly afterBagNumber: string;
  readonly beforeColourIu: string;
  readonly afterColourIu: string;
  readonly standardIu: string;
  readonly packGrams: number | null;
  readonly insideGrams: number | null;
  readonly note: string | null;
  readonly madeAt: Instant;
  readonly personId: string | null;
}

export interface SampleRow {
  readonly trialId: string;
  readonly fromGrams: number;
  readonly toGrams: number;
  readonly colourIu: string;
}

/** A trial, what was taken, and what that says of the hopper: the fit is reckoned each time and stored nowhere. */
export interface FittedTrial {
  readonly trial: TrialRow;
  /** By rising grams. */
  readonly samples: readonly SampleRow[];
  readonly fit: TrialFit | TrialRefused;
}

const trialSelect = (): string => `
  SELECT t."id", h."site_id" AS "siteId", t."hopper_id" AS "hopperId", t."number",
    t."before_bag_id" AS "beforeBagId", b."number" AS "beforeBagNumber",
    t."after_bag_id" AS "afterBagId", a."number" AS "afterBagNumber",
    t."before_colour_iu" AS "beforeColourIu", t."after_colour_iu" AS "afterColourIu", t."standard_iu" AS "standardIu",
    t."pack_grams" AS "packGrams", t."inside_grams" AS "insideGrams", t."note", t."made_at" AS "madeAt",
    t."person_id" AS "personId"
  FROM "tracer_trial" t JOIN "hopper" h ON h."id" = t."hopper_id"
  JOIN "bulk_bag" b ON b."id" = t."before_bag_id" JOIN "bulk_bag" a ON a."id" = t."after_bag_id"
  WHERE t."voided_by" IS NULL`;

/** @throws {NotFound} `tracer-trial`, also for one that was withdrawn or is of another site */
export async function trialOf(from: ReadFrom, siteId: string, trialId: string): Promise<FittedTrial> {
  const row = onlyRow(await from.sql<TrialRow>`${trialSelect} AND t."id" = ${trialId}`);
  if (row?.siteId !== siteId) throw new NotFound('tracer-trial', trialId);
  return fitted(row, await samplesOf(from, [row.id]));
}

/** The good trials of a hopper, the last first. */
export async function trialsOfHopper(from: ReadFrom, hopperId: string): Promise<readonly FittedTrial[]> {
  const rows = await from.sql<TrialRow>`
    ${trialSelect} AND t."hopper_id" = ${hopperId} ORDER BY t."number" DESC LIMIT 50`;
  const samples = await samplesOf(
    from,
    rows.map(({ id }) => id),
  );
  return rows.map((row) => fitted(row, samples));
}

async function samplesOf(from: ReadFrom, trialIds: readonly string[]): Promise<readonly SampleRow[]> {
  if (trialIds.length === 0) return [];
  const rows = await from.sql<SampleRow>`
    SELECT "trial_id" AS "trialId", "from_grams" AS "fromGrams", "to_grams" AS "toGrams", "colour_iu" AS "colourIu"
    FROM "tracer_sample" WHERE "trial_id" IN (${() => [...trialIds]}) AND "voided_by" IS NULL
    ORDER BY "trial_id", "from_grams", "id"`;
  return rows.map((row) => ({ ...row, fromGrams: toWhole(row.fromGrams), toGrams: toWhole(row.toGrams) }));
}

function fitted(stored: TrialRow, samples: readonly SampleRow[]): FittedTrial {
  const own = samples.filter(({ trialId }) => trialId === stored.id);
  const trial = { ...stored, insideGrams: stored.insideGrams === null ? null : toWhole(stored.insideGrams) };
  return { trial, samples: own, fit: fitTracerTrial(toFit(trial, own)) };
}

function toFit(trial: TrialRow, samples: readonly SampleRow[]): TrialToFit {
  const standardIu = Number(trial.standardIu);
  return {
    before: { colourIu: Number(trial.beforeColourIu), standardIu },
    after: { colourIu: Number(trial.afterColourIu), standardIu },
    samples: samples.map(({ fromGrams, toGrams, colourIu }) => {
      return { fromGrams, toGrams, colourIu: Number(colourIu), standardIu };
    }),
  };
}
