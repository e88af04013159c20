import { migration } from '../src/platform/database/migration.js';

/** Checks that a pack weigher made itself with known test packs, each a line check too. */
export const weigherChecks = migration(24, 'weigher-checks', [
  `CREATE TABLE "weigher_check" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "device_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "sequence" bigint NOT NULL,
    "check_id" varchar NOT NULL,
    "readings" text NOT NULL,
    "digest" varchar NOT NULL,
    "received_at" varchar NOT NULL,
    CONSTRAINT "pk_weigher_check" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weigher_check_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id"),
    CONSTRAINT "fk_weigher_check_device_id" FOREIGN KEY ("device_id") REFERENCES "device" ("id"),
    CONSTRAINT "fk_weigher_check_check_id" FOREIGN KEY ("check_id") REFERENCES "line_check" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_weigher_check_device_id_series_sequence" ON "weigher_check" ("device_id", "series", "sequence")`,
  `CREATE INDEX "ix_weigher_check_check_id" ON "weigher_check" ("check_id")`,
  {
    guard: {
      table: 'weigher_check',
      columns: ['id', 'weigher_id', 'device_id', 'series', 'sequence', 'check_id', 'readings', 'digest', 'received_at'],
      voidable: false,
      keys: [{ columns: ['id'] }, { columns: ['device_id', 'series', 'sequence'] }],
    },
  },
]);
