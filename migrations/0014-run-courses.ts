import { migration } from '../src/platform/database/migration.js';

/** The counts of closed runs in one row each, and indexes for questions that met the whole history of the plant. */
export const runCourses = migration(14, 'run-courses', [
  `CREATE TABLE "run_course" (
    "run_id" varchar NOT NULL,
    "course" text NOT NULL,
    CONSTRAINT "pk_run_course" PRIMARY KEY ("run_id")
  )`,
  `CREATE INDEX "ix_hopper_period_previous_period_id" ON "hopper_period" ("previous_period_id")`,
  `CREATE INDEX "ix_hopper_period_hopper_id_started_at" ON "hopper_period" ("hopper_id", "started_at")`,
  `CREATE INDEX "ix_bulk_bag_liner_lot_key" ON "bulk_bag" (UPPER("liner_lot"))`,
  `CREATE INDEX "ix_delivery_order_key" ON "delivery" (UPPER("order_number"))`,
  `CREATE INDEX "ix_delivery_plan_order_key" ON "delivery_plan" (UPPER("order_number"))`,
]);
