import { migration } from '../src/platform/database/migration.js';

/** The few results that repeat an earlier one, so that the latest are found without looking through a thousand. */
export const repeatsOfResults = migration(28, 'repeats-of-results', [
  `CREATE INDEX "ix_result_id" ON "result" ("id") WHERE "retest_number" > 0 AND "voided_by" IS NULL`,
]);
