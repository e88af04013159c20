import { migration } from '../src/platform/database/migration.js';

/** Ways by which weights come in: who may send by MQTT, what the columns of exported files mean, files not yet stored. */
export const waysIn = migration(19, 'ways-in', [
  `CREATE TABLE "weigher_way" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "takes_mqtt" boolean NOT NULL,
    "set_at" varchar NOT NULL,
    CONSTRAINT "pk_weigher_way" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weigher_way_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id")
  )`,
  `CREATE INDEX "ix_weigher_way_weigher_id" ON "weigher_way" ("weigher_id")`,
  {
    guard: {
      table: 'weigher_way',
      columns: ['id', 'weigher_id', 'takes_mqtt', 'set_at'],
      voidable: false,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "file_layout" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "layout" text NOT NULL,
    "set_at" varchar NOT NULL,
    CONSTRAINT "pk_file_layout" PRIMARY KEY ("id"),
    CONSTRAINT "fk_file_layout_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id")
  )`,
  `CREATE INDEX "ix_file_layout_weigher_id" ON "file_layout" ("weigher_id")`,
  {
    guard: {
      table: 'file_layout',
      columns: ['id', 'weigher_id', 'layout', 'set_at'],
      voidable: false,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "weight_file" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "layout_id" varchar NOT NULL,
    "name" varchar NOT NULL,
    "digest" varchar NOT NULL,
    "byte_count" integer NOT NULL,
    "packed" {bytes} NOT NULL,
    "brought_at" varchar NOT NULL,
    CONSTRAINT "pk_weight_file" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weight_file_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id"),
    CONSTRAINT "fk_weight_file_layout_id" FOREIGN KEY ("layout_id") REFERENCES "file_layout" ("id")
  )`,
  `CREATE INDEX "ix_weight_file_brought_at" ON "weight_file" ("brought_at")`,
]);
