import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import type { JudgedMarket } from '../run-weights/judged-markets.js';

/** Where a format is sold, and what a kilogram is worth. */
export interface SaleOfFormat {
  readonly markets: readonly JudgedMarket[];
  /** Null: no money is said. */
  readonly pricePerKilogram: string | null;
  /** Of the price, by ISO 4217; null: nobody said, amounts have none. */
  readonly currency: string | null;
  readonly validFrom: Instant;
}

/** A format with how it is sold; null: nobody said. */
export interface FormatWithSale {
  readonly formatId: string;
  readonly formatName: string;
  readonly sale: SaleOfFormat | null;
}

interface StoredSale {
  readonly markets: string;
  readonly pricePerKilogram: string | null;
  readonly currency: string | null;
  readonly validFrom: Instant;
}

/** How a format was sold at an instant; null: nobody said. */
export async function saleOfFormat(from: ReadFrom, formatId: string, at: Instant): Promise<SaleOfFormat | null> {
  const [row] = await from.sql<StoredSale>`
    SELECT "markets", "price_per_kilogram" AS "pricePerKilogram", "currency", "valid_from" AS "validFrom"
    FROM "format_sale"
    WHERE "format_id" = ${formatId} AND "voided_by" IS NULL AND "valid_from" <= ${at}
    ORDER BY "valid_from" DESC LIMIT 1`;
  return row === undefined ? null : saleOf(row);
}

/** The formats of a site by code, each as it is sold at an instant. */
export async function salesOfSite(from: ReadFrom, siteId: string, at: Instant): Promise<readonly FormatWithSale[]> {
  const rows = await from.sql<Partial<StoredSale> & { formatId: string; formatName: string; saleId: string | null }>`
    SELECT f."id" AS "formatId", f."name" AS "formatName", s."id" AS "saleId", s."markets",
      s."price_per_kilogram" AS "pricePerKilogram", s."currency", s."valid_from" AS "validFrom"
    FROM "pack_format" f LEFT JOIN "format_sale" s ON s."id" = (
      SELECT x."id" FROM "format_sale" x WHERE x."format_id" = f."id" AND x."voided_by" IS NULL
        AND x."valid_from" <= ${at} ORDER BY x."valid_from" DESC LIMIT 1)
    WHERE f."site_id" = ${siteId} ORDER BY f."code"`;
  return rows.map(({ formatId, formatName, saleId, ...row }) => ({
    ...{ formatId, formatName, sale: saleId === null ? null : saleOf(row as StoredSale) },
  }));
}

function saleOf({ markets, pricePerKilogram, currency, validFrom }: StoredSale): SaleOfFormat {
  return { markets: JSON.parse(markets) as JudgedMarket[], pricePerKilogram, currency, validFrom };
}
