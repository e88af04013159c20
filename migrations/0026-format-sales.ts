import { migration } from '../src/platform/database/migration.js';

/** Where each format is sold, and what a kilogram of it is worth. */
export const formatSales = migration(26, 'format-sales', [
  `CREATE TABLE "format_sale" (
    "id" varchar NOT NULL,
    "format_id" varchar NOT NULL,
    "markets" text NOT NULL,
    "price_per_kilogram" varchar,
    "valid_from" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_format_sale" PRIMARY KEY ("id"),
    CONSTRAINT "fk_format_sale_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_format_sale_format_id_valid_from" ON "format_sale" ("format_id", "valid_from") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'format_sale',
      columns: ['id', 'format_id', 'markets', 'price_per_kilogram', 'valid_from', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['format_id', 'valid_from'], where: '"voided_by" IS NULL' }],
    },
  },
]);
