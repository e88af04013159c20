import { migration } from '../src/platform/database/migration.js';

/** In which currency a price per kilogram is; of older ones nobody said. */
export const saleCurrencies = migration(27, 'sale-currencies', [
  `ALTER TABLE "format_sale" ADD COLUMN "currency" varchar`,
  { guardColumn: { table: 'format_sale', column: 'currency' } },
]);
