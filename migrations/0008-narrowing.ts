import { migration } from '../src/platform/database/migration.js';

/** What quality took out of the reach of holds, and the ground for it. */
export const narrowing = migration(8, 'narrowing', [
  `CREATE TABLE "hold_narrowing" (
    "id" varchar NOT NULL,
    "hold_id" varchar NOT NULL,
    "hazard" varchar NOT NULL,
    "reason" text NOT NULL,
    "assessment" text,
    "person_id" varchar,
    "narrowed_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_hold_narrowing" PRIMARY KEY ("id"),
    CONSTRAINT "fk_hold_narrowing_hold_id" FOREIGN KEY ("hold_id") REFERENCES "hold" ("id")
  )`,
  `CREATE INDEX "ix_hold_narrowing_hold_id" ON "hold_narrowing" ("hold_id")`,
  {
    guard: {
      table: 'hold_narrowing',
      columns: ['id', 'hold_id', 'hazard', 'reason', 'assessment', 'person_id', 'narrowed_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "narrowed_part" (
    "id" varchar NOT NULL,
    "narrowing_id" varchar NOT NULL,
    "unit_kind" varchar NOT NULL,
    "unit_id" varchar NOT NULL,
    "from_at" varchar,
    "until_at" varchar,
    CONSTRAINT "pk_narrowed_part" PRIMARY KEY ("id"),
    CONSTRAINT "fk_narrowed_part_narrowing_id" FOREIGN KEY ("narrowing_id") REFERENCES "hold_narrowing" ("id")
  )`,
  `CREATE INDEX "ix_narrowed_part_narrowing_id" ON "narrowed_part" ("narrowing_id")`,
  {
    guard: {
      table: 'narrowed_part',
      columns: ['id', 'narrowing_id', 'unit_kind', 'unit_id', 'from_at', 'until_at'],
      voidable: false,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "narrowing_ground" (
    "id" varchar NOT NULL,
    "part_id" varchar NOT NULL,
    "run_id" varchar,
    "from_count" integer,
    "to_count" integer,
    "bag_id" varchar,
    "period_id" varchar,
    "most_grams" integer,
    "word" varchar,
    CONSTRAINT "pk_narrowing_ground" PRIMARY KEY ("id"),
    CONSTRAINT "fk_narrowing_ground_part_id" FOREIGN KEY ("part_id") REFERENCES "narrowed_part" ("id")
  )`,
  `CREATE INDEX "ix_narrowing_ground_part_id" ON "narrowing_ground" ("part_id")`,
  {
    guard: {
      table: 'narrowing_ground',
      columns: ['id', 'part_id', 'run_id', 'from_count', 'to_count', 'bag_id', 'period_id', 'most_grams', 'word'],
      voidable: false,
      keys: [{ columns: ['id'] }],
    },
  },
]);
