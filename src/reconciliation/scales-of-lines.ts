import { uncertaintyOfReading, type Uncertainty } from '../core/mass-balance/uncertainty.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** What a scale can tell. */
export interface ScaleLimits {
  readonly id: string;
  readonly intervalMilligrams: number;
  readonly maximumPermissibleErrorMilligrams: number;
}

export type Scales = ReadonlyMap<string, ScaleLimits>;

/** The scales of a site. There are a handful. */
export async function scalesOfSite(from: ReadFrom, siteId: string): Promise<Scales> {
  const rows = await from.sql<ScaleLimits>`
    SELECT "id", "interval_milligrams" AS "intervalMilligrams",
      "maximum_permissible_error_milligrams" AS "maximumPermissibleErrorMilligrams"
    FROM "scale" WHERE "site_id" = ${siteId}`;
  return new Map(
    rows.map(({ id, ...limits }) => {
      const intervalMilligrams = toWhole(limits.intervalMilligrams);
      const maximumPermissibleErrorMilligrams = toWhole(limits.maximumPermissibleErrorMilligrams);
      return [id, { id, intervalMilligrams, maximumPermissibleErrorMilligrams }];
    }),
  );
}

/** The uncertainty of a net on a scale; one reading where the tare was preset. */
export function uncertaintyOnScale(scale: ScaleLimits, readingCount: 1 | 2): Uncertainty {
  return uncertaintyOfReading({
    scaleId: scale.id,
    maximumPermissibleErrorGrams: scale.maximumPermissibleErrorMilligrams / 1000,
    intervalGrams: scale.intervalMilligrams / 1000,
    readingCount,
  });
}
