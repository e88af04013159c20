import { toBoolean } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** A weighing as it is shown, void ones too. */
export interface WeighingRow {
  readonly id: string;
  readonly occasion: 'filled' | 'weighed-back' | 'weighed-again';
  readonly grossGrams: number;
  readonly tareGrams: number;
  readonly netGrams: number;
  readonly isPresetTare: boolean;
  readonly scaleId: string;
  readonly scaleCode: string;
  readonly weighedAt: string;
  readonly isDoubtful: boolean;
  readonly isVoid: boolean;
}

/** All weighings of a bag in the order of time. */
export async function weighingsOf(from: ReadFrom, bagId: string): Promise<readonly WeighingRow[]> {
  const rows = await from.sql<
    Omit<WeighingRow, 'isPresetTare' | 'isDoubtful' | 'isVoid'> & {
      isPresetTare: boolean | number;
      isDoubtful: boolean | number;
      voidedBy: string | null;
    }
  >`
    SELECT w."id", w."occasion", w."gross_grams" AS "grossGrams", w."tare_grams" AS "tareGrams",
      w."net_grams" AS "netGrams", w."is_preset_tare" AS "isPresetTare", w."scale_id" AS "scaleId",
      s."code" AS "scaleCode", w."weighed_at" AS "weighedAt", w."is_doubtful" AS "isDoubtful",
      w."voided_by" AS "voidedBy"
    FROM "bag_weighing" w JOIN "scale" s ON s."id" = w."scale_id"
    WHERE w."bag_id" = ${bagId} ORDER BY w."weighed_at", w."id"`;
  return rows.map(({ voidedBy, ...row }) => ({
    ...row,
    isPresetTare: toBoolean(row.isPresetTare),
    isDoubtful: toBoolean(row.isDoubtful),
    isVoid: voidedBy !== null,
  }));
}
