import { migration } from '../src/platform/database/migration.js';

/** The accepted packs of each minute beside the sums of an hour. */
export const minuteSums = migration(22, 'minute-sums', [`ALTER TABLE "weight_hour" ADD "accepted_minutes" {bytes}`]);
