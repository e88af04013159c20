import { migration } from '../src/platform/database/migration.js';

/**
 * What was entered while the network or the server was away: proofs of the people who wait on a device, how an entry
 * came in, entries that were kept because they could not be taken, and pallet numbers set aside.
 */
export const offLine = migration(5, 'off-line', [
  `CREATE TABLE "entry_happening" (
    "entry_id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "action" varchar NOT NULL,
    "how" varchar NOT NULL,
    "happened_at" varchar NOT NULL,
    "sheet" varchar,
    "sheet_row" integer,
    "written_by" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_entry_happening" PRIMARY KEY ("entry_id")
  )`,
  `CREATE UNIQUE INDEX "ix_entry_happening_site_id_sheet_sheet_row_action" ON "entry_happening" ("site_id", "sheet", "sheet_row", "action") WHERE "voided_by" IS NULL`,
  {
    guard: {
      table: 'entry_happening',
      columns: ['entry_id', 'site_id', 'action', 'how', 'happened_at', 'sheet', 'sheet_row', 'written_by', 'voided_by'],
      voidable: true,
      keys: [
        { columns: ['entry_id'] },
        { columns: ['site_id', 'sheet', 'sheet_row', 'action'], where: '"voided_by" IS NULL' },
      ],
    },
  },
  `CREATE TABLE "queue_proof" (
    "token_hash" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "device_id" varchar NOT NULL,
    "session_hash" varchar NOT NULL,
    "issued_at" varchar NOT NULL,
    "ends_at" varchar NOT NULL,
    "signed_out_at" varchar NOT NULL,
    CONSTRAINT "pk_queue_proof" PRIMARY KEY ("token_hash")
  )`,
  `CREATE INDEX "ix_queue_proof_session_hash" ON "queue_proof" ("session_hash")`,
  `CREATE INDEX "ix_queue_proof_person_id" ON "queue_proof" ("person_id")`,
  `CREATE TABLE "kept_entry" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "person_id" varchar,
    "device_id" varchar,
    "route" varchar NOT NULL,
    "address" varchar NOT NULL,
    "entry_key" varchar NOT NULL,
    "content" text NOT NULL,
    "how" varchar NOT NULL,
    "happened_at" varchar NOT NULL,
    "sheet" varchar,
    "sheet_row" integer,
    "written_by" varchar,
    "code" varchar NOT NULL,
    "facts" text NOT NULL,
    "kept_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_kept_entry" PRIMARY KEY ("id"),
    CONSTRAINT "fk_kept_entry_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  )`,
  `CREATE INDEX "ix_kept_entry_site_id_entry_key" ON "kept_entry" ("site_id", "entry_key")`,
  {
    guard: {
      table: 'kept_entry',
      columns: [
        'id',
        'site_id',
        'person_id',
        'device_id',
        'route',
        'address',
        'entry_key',
        'content',
        'how',
        'happened_at',
        'sheet',
        'sheet_row',
        'written_by',
        'code',
        'facts',
        'kept_at',
        'voided_by',
      ],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "sscc_block" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "device_id" varchar,
    "sheet" varchar,
    "set_aside_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_sscc_block" PRIMARY KEY ("id"),
    CONSTRAINT "fk_sscc_block_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  )`,
  `CREATE INDEX "ix_sscc_block_device_id" ON "sscc_block" ("device_id")`,
  {
    guard: {
      table: 'sscc_block',
      columns: ['id', 'site_id', 'device_id', 'sheet', 'set_aside_at', 'voided_by'],
      voidable: true,
      keys: [{ columns: ['id'] }],
    },
  },
  `CREATE TABLE "sscc_set_aside" (
    "sscc" varchar NOT NULL,
    "block_id" varchar NOT NULL,
    CONSTRAINT "pk_sscc_set_aside" PRIMARY KEY ("sscc"),
    CONSTRAINT "fk_sscc_set_aside_block_id" FOREIGN KEY ("block_id") REFERENCES "sscc_block" ("id")
  )`,
  `CREATE INDEX "ix_sscc_set_aside_block_id" ON "sscc_set_aside" ("block_id")`,
  {
    guard: { table: 'sscc_set_aside', columns: ['sscc', 'block_id'], voidable: false, keys: [{ columns: ['sscc'] }] },
  },
]);
