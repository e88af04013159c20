import { mean } from '../core/statistics/mean.js';
import { standardDeviation } from '../core/statistics/standard-deviation.js';
import { usualNetOf } from '../plant/bag-types.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';
import { kilogramsText } from '../platform/web/figures-text.js';
import type { BagRow } from './bulk-bags.js';

/** Between what a net or tare usually lies, both ends included, and how that is known. */
export interface UsualBand {
  readonly leastGrams: number;
  readonly mostGrams: number;
  readonly source: 'last-bags' | 'grade' | 'bag-type';
}

/** What was out of the usual though somebody looked once more: the cause of a point and its facts. */
export interface Unusual {
  readonly cause: 'net-not-usual-kept' | 'tare-not-usual-kept';
  readonly facts: { readonly kilograms: string; readonly least: string; readonly most: string };
}

/** So many bags are looked at, and at least so many are needed to say what is usual. Our own values, no source. */
const lookedAt = 30;
const needed = 10;

/** Four standard deviations either side of the mean; common practice, no source. */
const deviations = 4;

/** A band is never closer than this: bags that happen to be alike do not make the next one strange. Our own value. */
const closestGrams = 2_000;

/** The usual net of bags of a grade by a scale: of the last bags where there are enough, else as the grade says. */
export async function usualNet(from: ReadFrom, gradeId: string, scaleId: string): Promise<UsualBand | null> {
  const rows = await from.sql<{ netGrams: number }>`
    SELECT w."net_grams" AS "netGrams" FROM "bag_weighing" w JOIN "bulk_bag" b ON b."id" = w."bag_id"
    WHERE w."scale_id" = ${scaleId} AND b."intended_grade_id" = ${gradeId} AND w."occasion" = 'filled'
      AND w."voided_by" IS NULL AND b."voided_by" IS NULL
    ORDER BY w."weighed_at" DESC, w."id" DESC LIMIT ${lookedAt}`;
  if (rows.length >= needed) return bandAround(rows.map(({ netGrams }) => netGrams));
  const said = await usualNetOf(from, gradeId);
  return said === null ? null : { leastGrams: said.leastNetGrams, mostGrams: said.mostNetGrams, source: 'grade' };
}

/** Mean and four standard deviations, on whole grams; a net exactly at the band's end is usual. */
export function bandAround(nets: readonly number[]): UsualBand {
  const centre = mean(nets);
  const halfGrams = Math.max(deviations * standardDeviation(nets), closestGrams);
  return {
    leastGrams: Math.max(0, Math.floor(centre - halfGrams)),
    mostGrams: Math.ceil(centre + halfGrams),
    source: 'last-bags',
  };
}

/** The band of the tare of a bag's own type; null where its type was not said. */
export async function usualTare(from: ReadFrom, bagId: string): Promise<UsualBand | null> {
  const [row] = await from.sql<{ leastGrams: number; mostGrams: number }>`
    SELECT t."least_tare_grams" AS "leastGrams", t."most_tare_grams" AS "mostGrams"
    FROM "bag_type_use" u JOIN "bag_type" t ON t."id" = u."bag_type_id" WHERE u."bag_id" = ${bagId}`;
  return row === undefined ? null : { ...row, source: 'bag-type' };
}

/** The two weights that somebody looked at once more, as a page sends them back: another weight is asked about anew. */
export function confirmationOf(weights: { readonly grossGrams: number; readonly tareGrams: number }): string {
  return `${weights.grossGrams}/${weights.tareGrams}`;
}

/**
 * What a person typed and is not usual is asked about once more. Answers what was unusual and confirmed, null where
 * nothing was.
 *
 * @throws {Refusal} `tare-not-usual`, `net-not-usual`
 */
export async function refuseUnusual(
  from: ReadFrom,
  bag: BagRow,
  form: {
    readonly grossGrams: number;
    readonly tareGrams: number;
    readonly scaleId: string;
    readonly confirmed?: string | null;
  },
): Promise<Unusual | null> {
  const isConfirmed = form.confirmed === confirmationOf(form);
  const netGrams = form.grossGrams - form.tareGrams;
  const tare = unusualIn(await usualTare(from, bag.id), form.tareGrams);
  if (tare !== null && !isConfirmed)
    throw new Refusal('tare-not-usual', { bag: bag.number, ...tare, confirmed: confirmationOf(form) });
  // A bag without a net is refused for that, and a bag above its safe load for that.
  if (netGrams <= 0 || form.grossGrams > bag.safeLoadGrams) return null;
  const net = unusualIn(await usualNet(from, bag.intendedGradeId, form.scaleId), netGrams);
  if (net !== null && !isConfirmed)
    throw new Refusal('net-not-usual', { bag: bag.number, ...net, confirmed: confirmationOf(form) });
  if (net !== null) return { cause: 'net-not-usual-kept', facts: net };
  return tare === null ? null : { cause: 'tare-not-usual-kept', facts: tare };
}

function unusualIn(band: UsualBand | null, grams: number): Unusual['facts'] | null {
  if (band === null || (grams >= band.leastGrams && grams <= band.mostGrams)) return null;
  const { leastGrams, mostGrams } = band;
  return { kilograms: kilogramsText(grams), least: kilogramsText(leastGrams), most: kilogramsText(mostGrams) };
}
