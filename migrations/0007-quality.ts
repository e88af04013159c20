import { migration } from '../src/platform/database/migration.js';

/** What quality has looked at, and who stands behind a concession too. */
export const quality = migration(7, 'quality', [
  `CREATE TABLE "change_review" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "sequence" bigint NOT NULL,
    "entry_id" varchar NOT NULL,
    "note" text,
    "person_id" varchar,
    "reviewed_at" varchar NOT NULL,
    CONSTRAINT "pk_change_review" PRIMARY KEY ("id"),
    CONSTRAINT "uq_change_review_site_id_sequence" UNIQUE ("site_id", "sequence"),
    CONSTRAINT "fk_change_review_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  )`,
  {
    guard: {
      table: 'change_review',
      columns: ['id', 'site_id', 'sequence', 'entry_id', 'note', 'person_id', 'reviewed_at'],
      voidable: false,
      keys: [{ columns: ['id'] }, { columns: ['site_id', 'sequence'] }],
    },
  },
  `CREATE TABLE "decision_second_person" (
    "id" varchar NOT NULL,
    "decision_id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    CONSTRAINT "pk_decision_second_person" PRIMARY KEY ("id"),
    CONSTRAINT "uq_decision_second_person_decision_id" UNIQUE ("decision_id"),
    CONSTRAINT "fk_decision_second_person_decision_id" FOREIGN KEY ("decision_id") REFERENCES "decision" ("id"),
    CONSTRAINT "fk_decision_second_person_person_id" FOREIGN KEY ("person_id") REFERENCES "person" ("id")
  )`,
  {
    guard: {
      table: 'decision_second_person',
      columns: ['id', 'decision_id', 'person_id'],
      voidable: false,
      keys: [{ columns: ['id'] }, { columns: ['decision_id'] }],
    },
  },
]);
