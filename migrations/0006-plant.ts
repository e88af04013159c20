import { migration } from '../src/platform/database/migration.js';

/** Types of bags and what they usually weigh, the usual net of a grade's bags, and the site as it was changed to. */
export const plant = migration(6, 'plant', [
  `CREATE TABLE "bag_type" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "name" varchar NOT NULL,
    "usual_tare_grams" integer NOT NULL,
    "least_tare_grams" integer NOT NULL,
    "most_tare_grams" integer NOT NULL,
    "safe_load_grams" integer NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_bag_type" PRIMARY KEY ("id"),
    CONSTRAINT "fk_bag_type_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_bag_type_site_id_code" ON "bag_type" ("site_id", "code") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'bag_type',
      columns: [
        'id',
        'site_id',
        'code',
        'name',
        'usual_tare_grams',
        'least_tare_grams',
        'most_tare_grams',
        'safe_load_grams',
        'voided_by',
      ],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['site_id', 'code'], where: '"voided_by" IS NULL' }],
    },
  },
  `CREATE TABLE "grade_usual_net" (
    "id" varchar NOT NULL,
    "grade_id" varchar NOT NULL,
    "least_net_grams" integer NOT NULL,
    "most_net_grams" integer NOT NULL,
    "set_at" varchar NOT NULL,
    CONSTRAINT "pk_grade_usual_net" PRIMARY KEY ("id"),
    CONSTRAINT "fk_grade_usual_net_grade_id" FOREIGN KEY ("grade_id") REFERENCES "grade" ("id")
  )`,
  `CREATE INDEX "ix_grade_usual_net_grade_id" ON "grade_usual_net" ("grade_id")`,
  {
    guard: {
      table: 'grade_usual_net',
      columns: ['id', 'grade_id', 'least_net_grams', 'most_net_grams', 'set_at'],
      voidable: false,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "site_revision" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "name" varchar NOT NULL,
    "time_zone" varchar NOT NULL,
    "production_day_start" varchar NOT NULL,
    "gln" varchar NOT NULL,
    "company_prefix" varchar NOT NULL,
    "sscc_extension_digit" integer NOT NULL,
    "changed_at" varchar NOT NULL,
    CONSTRAINT "pk_site_revision" PRIMARY KEY ("id"),
    CONSTRAINT "fk_site_revision_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  )`,
  `CREATE INDEX "ix_site_revision_site_id" ON "site_revision" ("site_id")`,
  {
    guard: {
      table: 'site_revision',
      columns: [
        'id',
        'site_id',
        'name',
        'time_zone',
        'production_day_start',
        'gln',
        'company_prefix',
        'sscc_extension_digit',
        'changed_at',
      ],
      voidable: false,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "bag_type_use" (
    "id" varchar NOT NULL,
    "bag_id" varchar NOT NULL,
    "bag_type_id" varchar NOT NULL,
    CONSTRAINT "pk_bag_type_use" PRIMARY KEY ("id"),
    CONSTRAINT "uq_bag_type_use_bag_id" UNIQUE ("bag_id"),
    CONSTRAINT "fk_bag_type_use_bag_id" FOREIGN KEY ("bag_id") REFERENCES "bulk_bag" ("id"),
    CONSTRAINT "fk_bag_type_use_bag_type_id" FOREIGN KEY ("bag_type_id") REFERENCES "bag_type" ("id")
  )`,
  {
    guard: {
      table: 'bag_type_use',
      columns: ['id', 'bag_id', 'bag_type_id'],
      voidable: false,
      keys: [{ columns: ['id'] }, { columns: ['bag_id'] }],
    },
  },
]);
