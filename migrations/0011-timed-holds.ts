import { migration } from '../src/platform/database/migration.js';

/** A hold may be on a shift of a dryer or a line, and on minutes of a run. */
export const timedHolds = migration(11, 'timed-holds', [
  `ALTER TABLE "hold" ADD COLUMN "from_at" varchar`,
  `ALTER TABLE "hold" ADD COLUMN "until_at" varchar`,
  { guardColumn: { table: 'hold', column: 'from_at' } },
  { guardColumn: { table: 'hold', column: 'until_at' } },
]);
