import { migration } from '../src/platform/database/migration.js';

/** Counts by walking round, plans that change, departures, and what comes back from customers. */
export const dispatch = migration(4, 'dispatch', [
  `ALTER TABLE "delivery_close" ADD COLUMN "short_code" varchar`,
  { guardColumn: { table: 'delivery_close', column: 'short_code' } },
  `CREATE TABLE "blind_count" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "unit_count" integer NOT NULL,
    "change_count" integer NOT NULL,
    "counted_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_blind_count" PRIMARY KEY ("id"),
    CONSTRAINT "fk_blind_count_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  )`,
  `CREATE INDEX "ix_blind_count_delivery_id" ON "blind_count" ("delivery_id")`,
  {
    guard: {
      table: 'blind_count',
      columns: ['id', 'delivery_id', 'unit_count', 'change_count', 'counted_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "refused_scan" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "scanned" text NOT NULL,
    "code" varchar NOT NULL,
    "facts" text NOT NULL,
    "refused_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_refused_scan" PRIMARY KEY ("id"),
    CONSTRAINT "fk_refused_scan_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  )`,
  `CREATE INDEX "ix_refused_scan_delivery_id" ON "refused_scan" ("delivery_id")`,
  {
    guard: {
      table: 'refused_scan',
      columns: ['id', 'delivery_id', 'scanned', 'code', 'facts', 'refused_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "delivery_plan" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "order_number" varchar NOT NULL,
    "planned_on" varchar NOT NULL,
    "leaves_at" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_delivery_plan" PRIMARY KEY ("id"),
    CONSTRAINT "fk_delivery_plan_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  )`,
  `CREATE INDEX "ix_delivery_plan_delivery_id" ON "delivery_plan" ("delivery_id")`,
  {
    guard: {
      table: 'delivery_plan',
      columns: ['id', 'delivery_id', 'order_number', 'planned_on', 'leaves_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "delivery_departure" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "left_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_delivery_departure" PRIMARY KEY ("id"),
    CONSTRAINT "fk_delivery_departure_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_delivery_departure_delivery_id" ON "delivery_departure" ("delivery_id") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'delivery_departure',
      columns: ['id', 'delivery_id', 'left_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['delivery_id'], where: '"voided_by" IS NULL' }],
    },
  },
  `CREATE TABLE "delivery_return" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "why" varchar NOT NULL,
    "remarks" text,
    "place_id" varchar NOT NULL,
    "returned_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_delivery_return" PRIMARY KEY ("id"),
    CONSTRAINT "fk_delivery_return_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_delivery_return_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id"),
    CONSTRAINT "fk_delivery_return_place_id" FOREIGN KEY ("place_id") REFERENCES "store_place" ("id")
  )`,
  `CREATE INDEX "ix_delivery_return_delivery_id" ON "delivery_return" ("delivery_id")`,
  {
    guard: {
      table: 'delivery_return',
      columns: ['id', 'site_id', 'delivery_id', 'why', 'remarks', 'place_id', 'returned_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "returned_unit" (
    "id" varchar NOT NULL,
    "return_id" varchar NOT NULL,
    "loading_id" varchar,
    "lot_id" varchar,
    "unit_count" integer NOT NULL,
    "credited_count" integer NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_returned_unit" PRIMARY KEY ("id"),
    CONSTRAINT "fk_returned_unit_return_id" FOREIGN KEY ("return_id") REFERENCES "delivery_return" ("id"),
    CONSTRAINT "fk_returned_unit_loading_id" FOREIGN KEY ("loading_id") REFERENCES "loading" ("id"),
    CONSTRAINT "fk_returned_unit_lot_id" FOREIGN KEY ("lot_id") REFERENCES "lot" ("id")
  )`,
  `CREATE INDEX "ix_returned_unit_lot_id" ON "returned_unit" ("lot_id")`,
  `CREATE UNIQUE INDEX "ix_returned_unit_loading_id" ON "returned_unit" ("loading_id") WHERE "voided_by" IS NULL`,
  `CREATE INDEX "ix_returned_unit_return_id" ON "returned_unit" ("return_id")`,
  {
    guard: {
      table: 'returned_unit',
      columns: ['id', 'return_id', 'loading_id', 'lot_id', 'unit_count', 'credited_count', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['loading_id'], where: '"voided_by" IS NULL' }],
    },
  },
  `CREATE TABLE "return_decision" (
    "id" varchar NOT NULL,
    "unit_id" varchar NOT NULL,
    "fate" varchar NOT NULL,
    "reason" text NOT NULL,
    "decided_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_return_decision" PRIMARY KEY ("id"),
    CONSTRAINT "fk_return_decision_unit_id" FOREIGN KEY ("unit_id") REFERENCES "returned_unit" ("id")
  )`,
  `CREATE UNIQUE INDEX "ix_return_decision_unit_id" ON "return_decision" ("unit_id") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'return_decision',
      columns: ['id', 'unit_id', 'fate', 'reason', 'decided_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }, { columns: ['unit_id'], where: '"voided_by" IS NULL' }],
    },
  },
]);
