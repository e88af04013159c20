import { migration } from '../src/platform/database/migration.js';

/** Recalls and exercises: what they are of, their moments, what customers answered, and what was signed. */
export const recalls = migration(10, 'recalls', [
  `CREATE TABLE "recall" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "number" varchar NOT NULL,
    "kind" varchar NOT NULL,
    "hazard" varchar NOT NULL,
    "reason" text NOT NULL,
    "sureness" varchar NOT NULL,
    "sureness_reason" text,
    "origin_kind" varchar,
    "origin_id" varchar,
    "opened_by" varchar,
    "started_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_recall" PRIMARY KEY ("id"),
    CONSTRAINT "uq_recall_site_id_number" UNIQUE ("site_id", "number"),
    CONSTRAINT "fk_recall_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  )`,
  {
    guard: {
      table: 'recall',
      columns: [
        'id',
        'site_id',
        'number',
        'kind',
        'hazard',
        'reason',
        'sureness',
        'sureness_reason',
        'origin_kind',
        'origin_id',
        'opened_by',
        'started_at',
        'voided_by',
      ],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['site_id', 'number'] }],
    },
  },
  `CREATE TABLE "recall_scope" (
    "id" varchar NOT NULL,
    "recall_id" varchar NOT NULL,
    "scope_kind" varchar NOT NULL,
    "scope_id" varchar NOT NULL,
    "from_at" varchar,
    "until_at" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_recall_scope" PRIMARY KEY ("id"),
    CONSTRAINT "fk_recall_scope_recall_id" FOREIGN KEY ("recall_id") REFERENCES "recall" ("id")
  )`,
  `CREATE INDEX "ix_recall_scope_scope_kind_scope_id" ON "recall_scope" ("scope_kind", "scope_id")`,
  `CREATE INDEX "ix_recall_scope_recall_id" ON "recall_scope" ("recall_id")`,
  {
    guard: {
      table: 'recall_scope',
      columns: ['id', 'recall_id', 'scope_kind', 'scope_id', 'from_at', 'until_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "recall_mark" (
    "id" varchar NOT NULL,
    "recall_id" varchar NOT NULL,
    "mark" varchar NOT NULL,
    "marked_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_recall_mark" PRIMARY KEY ("id"),
    CONSTRAINT "fk_recall_mark_recall_id" FOREIGN KEY ("recall_id") REFERENCES "recall" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_recall_mark_recall_id_mark" ON "recall_mark" ("recall_id", "mark") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'recall_mark',
      columns: ['id', 'recall_id', 'mark', 'marked_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['recall_id', 'mark'], where: '"voided_by" IS NULL' }],
    },
  },
  `CREATE TABLE "recall_answer" (
    "id" varchar NOT NULL,
    "recall_id" varchar NOT NULL,
    "customer_id" varchar NOT NULL,
    "answer" varchar NOT NULL,
    "pack_count" integer NOT NULL,
    "bag_grams" integer NOT NULL,
    "remarks" text,
    "answered_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_recall_answer" PRIMARY KEY ("id"),
    CONSTRAINT "fk_recall_answer_recall_id" FOREIGN KEY ("recall_id") REFERENCES "recall" ("id"),
    CONSTRAINT "fk_recall_answer_customer_id" FOREIGN KEY ("customer_id") REFERENCES "customer" ("id")
  )`,
  `CREATE INDEX "ix_recall_answer_recall_id" ON "recall_answer" ("recall_id")`,
  {
    guard: {
      table: 'recall_answer',
      columns: [
        'id',
        'recall_id',
        'customer_id',
        'answer',
        'pack_count',
        'bag_grams',
        'remarks',
        'answered_at',
        'voided_by',
      ],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "recall_signing" (
    "id" varchar NOT NULL,
    "recall_id" varchar NOT NULL,
    "figures" text NOT NULL,
    "explanation" text,
    "journal_head" varchar NOT NULL,
    "signed_by" varchar,
    "signed_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_recall_signing" PRIMARY KEY ("id"),
    CONSTRAINT "fk_recall_signing_recall_id" FOREIGN KEY ("recall_id") REFERENCES "recall" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_recall_signing_recall_id" ON "recall_signing" ("recall_id") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'recall_signing',
      columns: ['id', 'recall_id', 'figures', 'explanation', 'journal_head', 'signed_by', 'signed_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['recall_id'], where: '"voided_by" IS NULL' }],
    },
  },
]);
