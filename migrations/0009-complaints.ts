import { migration } from '../src/platform/database/migration.js';

/** Complaints: what was said, what it is about, what was found and done; who said it stands apart and can go. */
export const complaints = migration(9, 'complaints', [
  `CREATE TABLE "complaint" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "number" varchar NOT NULL,
    "customer_id" varchar,
    "code_as_read" varchar,
    "bought_where" varchar,
    "bought_on" varchar,
    "pack_count" integer,
    "words" text NOT NULL,
    "received_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_complaint" PRIMARY KEY ("id"),
    CONSTRAINT "uq_complaint_site_id_number" UNIQUE ("site_id", "number"),
    CONSTRAINT "fk_complaint_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_complaint_customer_id" FOREIGN KEY ("customer_id") REFERENCES "customer" ("id")
  )`,
  {
    guard: {
      table: 'complaint',
      columns: [
        'id',
        'site_id',
        'number',
        'customer_id',
        'code_as_read',
        'bought_where',
        'bought_on',
        'pack_count',
        'words',
        'received_at',
        'voided_by',
      ],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['site_id', 'number'] }],
    },
  },
  `CREATE TABLE "complaint_class" (
    "id" varchar NOT NULL,
    "complaint_id" varchar NOT NULL,
    "category" varchar NOT NULL,
    "severity" varchar NOT NULL,
    "reason" text,
    "set_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_complaint_class" PRIMARY KEY ("id"),
    CONSTRAINT "fk_complaint_class_complaint_id" FOREIGN KEY ("complaint_id") REFERENCES "complaint" ("id")
  )`,
  `CREATE INDEX "ix_complaint_class_complaint_id" ON "complaint_class" ("complaint_id")`,
  {
    guard: {
      table: 'complaint_class',
      columns: ['id', 'complaint_id', 'category', 'severity', 'reason', 'set_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "complaint_link" (
    "id" varchar NOT NULL,
    "complaint_id" varchar NOT NULL,
    "subject_kind" varchar NOT NULL,
    "subject_id" varchar NOT NULL,
    "local_time" varchar,
    "printed_at" varchar,
    "coded_from_at" varchar,
    "coded_until_at" varchar,
    "linked_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_complaint_link" PRIMARY KEY ("id"),
    CONSTRAINT "fk_complaint_link_complaint_id" FOREIGN KEY ("complaint_id") REFERENCES "complaint" ("id")
  )`,
  `CREATE INDEX "ix_complaint_link_subject_kind_subject_id" ON "complaint_link" ("subject_kind", "subject_id")`,
  `CREATE INDEX "ix_complaint_link_complaint_id" ON "complaint_link" ("complaint_id")`,
  {
    guard: {
      table: 'complaint_link',
      columns: [
        'id',
        'complaint_id',
        'subject_kind',
        'subject_id',
        'local_time',
        'printed_at',
        'coded_from_at',
        'coded_until_at',
        'linked_at',
        'voided_by',
      ],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "complaint_step" (
    "id" varchar NOT NULL,
    "complaint_id" varchar NOT NULL,
    "kind" varchar NOT NULL,
    "words" text,
    "way" varchar,
    "person_id" varchar,
    "done_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_complaint_step" PRIMARY KEY ("id"),
    CONSTRAINT "fk_complaint_step_complaint_id" FOREIGN KEY ("complaint_id") REFERENCES "complaint" ("id")
  )`,
  `CREATE INDEX "ix_complaint_step_complaint_id" ON "complaint_step" ("complaint_id")`,
  {
    guard: {
      table: 'complaint_step',
      columns: ['id', 'complaint_id', 'kind', 'words', 'way', 'person_id', 'done_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "complaint_state" (
    "complaint_id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "status" varchar NOT NULL,
    "change_count" integer NOT NULL,
    CONSTRAINT "pk_complaint_state" PRIMARY KEY ("complaint_id")
  )`,
  `CREATE INDEX "ix_complaint_state_site_id_status" ON "complaint_state" ("site_id", "status")`,
  `CREATE TABLE "complaint_contact" (
    "complaint_id" varchar NOT NULL,
    "name" varchar NOT NULL,
    "reach" varchar,
    CONSTRAINT "pk_complaint_contact" PRIMARY KEY ("complaint_id")
  )`,
]);
