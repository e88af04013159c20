import { migration } from '../src/platform/database/migration.js';

/** Plans of hand samples; how long a pack weigher may be silent, and when it was. */
export const weighingWatched = migration(20, 'weighing-watched', [
  `CREATE TABLE "hand_sample_plan" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "format_id" varchar,
    "every_minutes" integer NOT NULL,
    "pack_count" integer NOT NULL,
    "grace_minutes" integer NOT NULL,
    "is_in_force" boolean NOT NULL,
    "set_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_hand_sample_plan" PRIMARY KEY ("id"),
    CONSTRAINT "fk_hand_sample_plan_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_hand_sample_plan_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id"),
    CONSTRAINT "fk_hand_sample_plan_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id")
  )`,
  `CREATE INDEX "ix_hand_sample_plan_line_id" ON "hand_sample_plan" ("line_id")`,
  {
    guard: {
      table: 'hand_sample_plan',
      columns: [
        'id',
        'site_id',
        'line_id',
        'format_id',
        'every_minutes',
        'pack_count',
        'grace_minutes',
        'is_in_force',
        'set_at',
        'voided_by',
      ],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "silence_setting" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "silent_after_minutes" integer,
    "set_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_silence_setting" PRIMARY KEY ("id"),
    CONSTRAINT "fk_silence_setting_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id")
  )`,
  `CREATE INDEX "ix_silence_setting_weigher_id" ON "silence_setting" ("weigher_id")`,
  {
    guard: {
      table: 'silence_setting',
      columns: ['id', 'weigher_id', 'silent_after_minutes', 'set_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "weigher_silence" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "since_at" varchar NOT NULL,
    "until_at" varchar,
    "found_at" varchar NOT NULL,
    CONSTRAINT "pk_weigher_silence" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weigher_silence_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id"),
    CONSTRAINT "fk_weigher_silence_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id")
  )`,
  `CREATE INDEX "ix_weigher_silence_run_id" ON "weigher_silence" ("run_id")`,
  `CREATE UNIQUE INDEX "ix_weigher_silence_weigher_id_run_id" ON "weigher_silence" ("weigher_id", "run_id") WHERE "until_at" IS NULL`,
]);
