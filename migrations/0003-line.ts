import { migration } from '../src/platform/database/migration.js';

/** The packing-line lead's day: labels scanned back, changeovers, handovers, and refusals that were met. */
export const line = migration(3, 'line', [
  `CREATE TABLE "changeover" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "from_run_id" varchar NOT NULL,
    "to_format_id" varchar NOT NULL,
    "opened_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_changeover" PRIMARY KEY ("id"),
    CONSTRAINT "fk_changeover_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_changeover_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id"),
    CONSTRAINT "fk_changeover_from_run_id" FOREIGN KEY ("from_run_id") REFERENCES "packing_run" ("id"),
    CONSTRAINT "fk_changeover_to_format_id" FOREIGN KEY ("to_format_id") REFERENCES "pack_format" ("id")
  )`,
  `CREATE INDEX "ix_changeover_line_id_opened_at" ON "changeover" ("line_id", "opened_at")`,
  {
    guard: {
      table: 'changeover',
      columns: ['id', 'site_id', 'line_id', 'from_run_id', 'to_format_id', 'opened_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "changeover_rung" (
    "id" varchar NOT NULL,
    "changeover_id" varchar NOT NULL,
    "rung" varchar NOT NULL,
    "record_id" varchar,
    "count" integer,
    "second_person_id" varchar,
    "note" text,
    "done_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_changeover_rung" PRIMARY KEY ("id"),
    CONSTRAINT "fk_changeover_rung_changeover_id" FOREIGN KEY ("changeover_id") REFERENCES "changeover" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_changeover_rung_changeover_id_rung" ON "changeover_rung" ("changeover_id", "rung") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'changeover_rung',
      columns: [
        'id',
        'changeover_id',
        'rung',
        'record_id',
        'count',
        'second_person_id',
        'note',
        'done_at',
        'voided_by',
      ],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['changeover_id', 'rung'], where: '"voided_by" IS NULL' }],
    },
  },
  `CREATE TABLE "refusal_met" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "hopper_id" varchar NOT NULL,
    "bag_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "met_at" varchar NOT NULL,
    CONSTRAINT "pk_refusal_met" PRIMARY KEY ("id")
  )`,
  `CREATE INDEX "ix_refusal_met_bag_id_met_at" ON "refusal_met" ("bag_id", "met_at")`,
  `CREATE TABLE "pallet_label_check" (
    "id" varchar NOT NULL,
    "pallet_id" varchar NOT NULL,
    "pack_code" varchar,
    "checked_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pallet_label_check" PRIMARY KEY ("id"),
    CONSTRAINT "fk_pallet_label_check_pallet_id" FOREIGN KEY ("pallet_id") REFERENCES "pallet" ("id")
  )`,
  `CREATE INDEX "ix_pallet_label_check_pallet_id" ON "pallet_label_check" ("pallet_id")`,
  {
    guard: {
      table: 'pallet_label_check',
      columns: ['id', 'pallet_id', 'pack_code', 'checked_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "handover" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "production_on" varchar NOT NULL,
    "shift_code" varchar NOT NULL,
    "from_at" varchar NOT NULL,
    "until_at" varchar NOT NULL,
    "points" text NOT NULL,
    "notes" text,
    "outgoing_person_id" varchar NOT NULL,
    "signed_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_handover" PRIMARY KEY ("id"),
    CONSTRAINT "fk_handover_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_handover_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_handover_line_id_from_at" ON "handover" ("line_id", "from_at") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'handover',
      columns: [
        'id',
        'site_id',
        'line_id',
        'production_on',
        'shift_code',
        'from_at',
        'until_at',
        'points',
        'notes',
        'outgoing_person_id',
        'signed_at',
        'voided_by',
      ],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['line_id', 'from_at'], where: '"voided_by" IS NULL' }],
    },
  },
  `CREATE TABLE "handover_answer" (
    "id" varchar NOT NULL,
    "handover_id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "how" varchar NOT NULL,
    "agrees" boolean NOT NULL,
    "disagreement" text,
    "answered_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_handover_answer" PRIMARY KEY ("id"),
    CONSTRAINT "fk_handover_answer_handover_id" FOREIGN KEY ("handover_id") REFERENCES "handover" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_handover_answer_handover_id" ON "handover_answer" ("handover_id") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'handover_answer',
      columns: ['id', 'handover_id', 'person_id', 'how', 'agrees', 'disagreement', 'answered_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['handover_id'], where: '"voided_by" IS NULL' }],
    },
  },
]);
