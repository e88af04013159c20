import { migration } from '../src/platform/database/migration.js';

/** In which language papers are written for a customer, and for the site where they go to none. */
export const paperLanguages = migration(12, 'paper-languages', [
  `CREATE TABLE "paper_language" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "customer_id" varchar,
    "language" varchar,
    "set_at" varchar NOT NULL,
    CONSTRAINT "pk_paper_language" PRIMARY KEY ("id"),
    CONSTRAINT "fk_paper_language_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_paper_language_customer_id" FOREIGN KEY ("customer_id") REFERENCES "customer" ("id")
  )`,
  `CREATE INDEX "ix_paper_language_customer_id" ON "paper_language" ("customer_id")`,
  `CREATE INDEX "ix_paper_language_site_id" ON "paper_language" ("site_id")`,
  {
    guard: {
      table: 'paper_language',
      columns: ['id', 'site_id', 'customer_id', 'language', 'set_at'],
      voidable: false,
      keys: [{ columns: ['id'] }],
    },
  },
]);
