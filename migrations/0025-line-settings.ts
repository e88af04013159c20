import { migration } from '../src/platform/database/migration.js';

/**
 * What a line is set to. And heads of short packs: so far 0 stood for head 0 and for none alike, from now on it is head 0, so
 * what was kept before becomes -2, "0 or none" (`zeroOrNoHead` of core/weight-blocks).
 */
export const lineSettings = migration(25, 'line-settings', [
  `CREATE TABLE "line_setting" (
    "id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "format_id" varchar NOT NULL,
    "setpoint_milligrams" integer,
    "reject_below_milligrams" integer,
    "reject_above_milligrams" integer,
    "changed_at" varchar NOT NULL,
    "why" text NOT NULL,
    "set_by" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_line_setting" PRIMARY KEY ("id"),
    CONSTRAINT "fk_line_setting_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id"),
    CONSTRAINT "fk_line_setting_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id")
  )`,
  `CREATE INDEX "ix_line_setting_line_id_changed_at" ON "line_setting" ("line_id", "changed_at")`,
  {
    guard: {
      table: 'line_setting',
      columns: [
        'id',
        'line_id',
        'format_id',
        'setpoint_milligrams',
        'reject_below_milligrams',
        'reject_above_milligrams',
        'changed_at',
        'why',
        'set_by',
        'voided_by',
      ],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `UPDATE "short_pack" SET "head" = -2 WHERE "head" = 0`,
]);
