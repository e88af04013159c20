import { migration } from '../src/platform/database/migration.js';

/** Pack weighers, the weights that they send, and which sequences of theirs were received. */
export const packWeights = migration(17, 'pack-weights', [
  `CREATE TABLE "pack_weigher" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "device_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "step_milligrams" integer NOT NULL,
    "maximum_permissible_error_milligrams" integer NOT NULL,
    "head_count" integer,
    "counts_packs" boolean NOT NULL,
    "rejects_packs" boolean NOT NULL,
    "set_up_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pack_weigher" PRIMARY KEY ("id"),
    CONSTRAINT "fk_pack_weigher_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_pack_weigher_device_id" FOREIGN KEY ("device_id") REFERENCES "device" ("id"),
    CONSTRAINT "fk_pack_weigher_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_pack_weigher_device_id" ON "pack_weigher" ("device_id") WHERE "voided_by" IS NULL`,
  `CREATE UNIQUE INDEX "ix_pack_weigher_site_id_code" ON "pack_weigher" ("site_id", "code") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'pack_weigher',
      columns: [
        'id',
        'site_id',
        'device_id',
        'line_id',
        'code',
        'step_milligrams',
        'maximum_permissible_error_milligrams',
        'head_count',
        'counts_packs',
        'rejects_packs',
        'set_up_at',
        'voided_by',
      ],
      voidable: true,
      keys: [
        { columns: ['id'] },
        { columns: ['device_id'], where: '"voided_by" IS NULL' },
        { columns: ['site_id', 'code'], where: '"voided_by" IS NULL' },
      ],
    },
  },
  `CREATE TABLE "weight_batch" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "first_sequence" bigint NOT NULL,
    "last_sequence" bigint NOT NULL,
    "weight_count" integer NOT NULL,
    "first_at" varchar NOT NULL,
    "last_at" varchar NOT NULL,
    "weights" {bytes} NOT NULL,
    "digest" varchar NOT NULL,
    "entry_id" varchar NOT NULL,
    "received_at" varchar NOT NULL,
    CONSTRAINT "pk_weight_batch" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weight_batch_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id"),
    CONSTRAINT "fk_weight_batch_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id")
  )`,
  `CREATE INDEX "ix_weight_batch_run_id" ON "weight_batch" ("run_id")`,
  `CREATE INDEX "ix_weight_batch_weigher_id_series_first_sequence" ON "weight_batch" ("weigher_id", "series", "first_sequence")`,
  `CREATE TABLE "weight_series" (
    "device_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "weight_count" bigint NOT NULL,
    "last_received_at" varchar NOT NULL,
    CONSTRAINT "pk_weight_series" PRIMARY KEY ("device_id", "series")
  )`,
  `CREATE TABLE "weight_range" (
    "device_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "from_sequence" bigint NOT NULL,
    "to_sequence" bigint NOT NULL,
    CONSTRAINT "pk_weight_range" PRIMARY KEY ("device_id", "series", "from_sequence")
  )`,
]);
