-- The schema on SQLite, with its triggers. Written by `npm run schema:write`; a test compares.

CREATE TABLE "number_series" (
    "site_id" varchar NOT NULL,
    "name" varchar NOT NULL,
    "next_number" bigint NOT NULL,
    CONSTRAINT "pk_number_series" PRIMARY KEY ("site_id", "name")
  );

CREATE TABLE "outbox_job" (
    "id" varchar NOT NULL,
    "kind" varchar NOT NULL,
    "payload" text NOT NULL,
    "created_at" varchar NOT NULL,
    "run_after" varchar NOT NULL,
    "leased_until" varchar,
    "attempts" integer NOT NULL,
    "finished_at" varchar,
    "last_error" text,
    CONSTRAINT "pk_outbox_job" PRIMARY KEY ("id")
  );

CREATE INDEX "ix_outbox_job_finished_at_run_after" ON "outbox_job" ("finished_at", "run_after");

CREATE TABLE "paper" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "kind" varchar NOT NULL,
    "edition" varchar NOT NULL,
    "number" varchar,
    "subject_kind" varchar NOT NULL,
    "subject_id" varchar NOT NULL,
    "facts" text NOT NULL,
    "issued_at" varchar NOT NULL,
    "person_id" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_paper" PRIMARY KEY ("id")
  );

CREATE INDEX "ix_paper_subject_kind_subject_id" ON "paper" ("subject_kind", "subject_id");

CREATE UNIQUE INDEX "ix_paper_site_id_number" ON "paper" ("site_id", "number");

CREATE TRIGGER "paper_no_update" BEFORE UPDATE OF "id", "site_id", "kind", "edition", "number", "subject_kind", "subject_id", "facts", "issued_at", "person_id" ON "paper" BEGIN SELECT RAISE(ABORT, 'fact:paper: rows are never changed'); END;

CREATE TRIGGER "paper_no_delete" BEFORE DELETE ON "paper" BEGIN SELECT RAISE(ABORT, 'fact:paper: rows are never deleted'); END;

CREATE TRIGGER "paper_no_replace" BEFORE INSERT ON "paper" WHEN EXISTS (SELECT 1 FROM "paper" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "paper" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:paper: the key is taken'); END;

CREATE TRIGGER "paper_void_once" BEFORE UPDATE OF "voided_by" ON "paper" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:paper: voided_by is set once'); END;

CREATE TABLE "paper_file" (
    "paper_id" varchar NOT NULL,
    "bytes" blob NOT NULL,
    "sha256" varchar NOT NULL,
    "rendered_at" varchar NOT NULL,
    CONSTRAINT "pk_paper_file" PRIMARY KEY ("paper_id"),
    CONSTRAINT "fk_paper_file_paper_id" FOREIGN KEY ("paper_id") REFERENCES "paper" ("id")
  );

CREATE TRIGGER "paper_file_no_update" BEFORE UPDATE OF "paper_id", "bytes", "sha256", "rendered_at" ON "paper_file" BEGIN SELECT RAISE(ABORT, 'fact:paper_file: rows are never changed'); END;

CREATE TRIGGER "paper_file_no_delete" BEFORE DELETE ON "paper_file" BEGIN SELECT RAISE(ABORT, 'fact:paper_file: rows are never deleted'); END;

CREATE TRIGGER "paper_file_no_replace" BEFORE INSERT ON "paper_file" WHEN EXISTS (SELECT 1 FROM "paper_file" WHERE "paper_id" = NEW."paper_id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:paper_file: the key is taken'); END;

CREATE TABLE "idempotency_key" (
    "holder" varchar NOT NULL,
    "route" varchar NOT NULL,
    "key" varchar NOT NULL,
    "content_hash" varchar NOT NULL,
    "answer" text NOT NULL,
    "used_at" varchar NOT NULL,
    CONSTRAINT "pk_idempotency_key" PRIMARY KEY ("holder", "route", "key")
  );

CREATE TABLE "journal_entry" (
    "site_id" varchar NOT NULL,
    "sequence" bigint NOT NULL,
    "id" varchar NOT NULL,
    "recorded_at" varchar NOT NULL,
    "occurred_at" varchar NOT NULL,
    "stated_at" varchar,
    "person_id" varchar,
    "device_id" varchar,
    "device_offset_milliseconds" bigint,
    "action" varchar NOT NULL,
    "subject_kind" varchar NOT NULL,
    "subject_id" varchar NOT NULL,
    "touches" text NOT NULL,
    "before" text,
    "after" text,
    "reason" text,
    "previous_hash" varchar NOT NULL,
    "hash" varchar NOT NULL,
    CONSTRAINT "pk_journal_entry" PRIMARY KEY ("site_id", "sequence"),
    CONSTRAINT "uq_journal_entry_id" UNIQUE ("id")
  );

CREATE TRIGGER "journal_entry_no_update" BEFORE UPDATE OF "site_id", "sequence", "id", "recorded_at", "occurred_at", "stated_at", "person_id", "device_id", "device_offset_milliseconds", "action", "subject_kind", "subject_id", "touches", "before", "after", "reason", "previous_hash", "hash" ON "journal_entry" BEGIN SELECT RAISE(ABORT, 'fact:journal_entry: rows are never changed'); END;

CREATE TRIGGER "journal_entry_no_delete" BEFORE DELETE ON "journal_entry" BEGIN SELECT RAISE(ABORT, 'fact:journal_entry: rows are never deleted'); END;

CREATE TRIGGER "journal_entry_no_replace" BEFORE INSERT ON "journal_entry" WHEN EXISTS (SELECT 1 FROM "journal_entry" WHERE "site_id" = NEW."site_id" AND "sequence" = NEW."sequence") OR EXISTS (SELECT 1 FROM "journal_entry" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:journal_entry: the key is taken'); END;

CREATE TABLE "journal_head" (
    "site_id" varchar NOT NULL,
    "sequence" bigint NOT NULL,
    "hash" varchar NOT NULL,
    CONSTRAINT "pk_journal_head" PRIMARY KEY ("site_id")
  );

CREATE TABLE "journal_subject" (
    "site_id" varchar NOT NULL,
    "sequence" bigint NOT NULL,
    "kind" varchar NOT NULL,
    "id" varchar NOT NULL,
    CONSTRAINT "pk_journal_subject" PRIMARY KEY ("site_id", "sequence", "kind", "id")
  );

CREATE INDEX "ix_journal_subject_kind_id_sequence" ON "journal_subject" ("kind", "id", "sequence");

CREATE TRIGGER "journal_subject_no_update" BEFORE UPDATE OF "site_id", "sequence", "kind", "id" ON "journal_subject" BEGIN SELECT RAISE(ABORT, 'fact:journal_subject: rows are never changed'); END;

CREATE TRIGGER "journal_subject_no_delete" BEFORE DELETE ON "journal_subject" BEGIN SELECT RAISE(ABORT, 'fact:journal_subject: rows are never deleted'); END;

CREATE TRIGGER "journal_subject_no_replace" BEFORE INSERT ON "journal_subject" WHEN EXISTS (SELECT 1 FROM "journal_subject" WHERE "site_id" = NEW."site_id" AND "sequence" = NEW."sequence" AND "kind" = NEW."kind" AND "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:journal_subject: the key is taken'); END;

CREATE TABLE "site" (
    "id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "name" varchar NOT NULL,
    "time_zone" varchar NOT NULL,
    "production_day_start" varchar NOT NULL,
    "gln" varchar NOT NULL,
    "company_prefix" varchar NOT NULL,
    "sscc_extension_digit" integer NOT NULL,
    CONSTRAINT "pk_site" PRIMARY KEY ("id"),
    CONSTRAINT "uq_site_code" UNIQUE ("code")
  );

CREATE TRIGGER "site_no_update" BEFORE UPDATE OF "id", "code", "name", "time_zone", "production_day_start", "gln", "company_prefix", "sscc_extension_digit" ON "site" BEGIN SELECT RAISE(ABORT, 'fact:site: rows are never changed'); END;

CREATE TRIGGER "site_no_delete" BEFORE DELETE ON "site" BEGIN SELECT RAISE(ABORT, 'fact:site: rows are never deleted'); END;

CREATE TRIGGER "site_no_replace" BEFORE INSERT ON "site" WHEN EXISTS (SELECT 1 FROM "site" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "site" WHERE "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:site: the key is taken'); END;

CREATE TABLE "packing_line" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "name" varchar NOT NULL,
    CONSTRAINT "pk_packing_line" PRIMARY KEY ("id"),
    CONSTRAINT "uq_packing_line_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_packing_line_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "packing_line_no_update" BEFORE UPDATE OF "id", "site_id", "code", "name" ON "packing_line" BEGIN SELECT RAISE(ABORT, 'fact:packing_line: rows are never changed'); END;

CREATE TRIGGER "packing_line_no_delete" BEFORE DELETE ON "packing_line" BEGIN SELECT RAISE(ABORT, 'fact:packing_line: rows are never deleted'); END;

CREATE TRIGGER "packing_line_no_replace" BEFORE INSERT ON "packing_line" WHEN EXISTS (SELECT 1 FROM "packing_line" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "packing_line" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:packing_line: the key is taken'); END;

CREATE TABLE "coder" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    CONSTRAINT "pk_coder" PRIMARY KEY ("id"),
    CONSTRAINT "uq_coder_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_coder_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_coder_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id")
  );

CREATE TRIGGER "coder_no_update" BEFORE UPDATE OF "id", "site_id", "line_id", "code" ON "coder" BEGIN SELECT RAISE(ABORT, 'fact:coder: rows are never changed'); END;

CREATE TRIGGER "coder_no_delete" BEFORE DELETE ON "coder" BEGIN SELECT RAISE(ABORT, 'fact:coder: rows are never deleted'); END;

CREATE TRIGGER "coder_no_replace" BEFORE INSERT ON "coder" WHEN EXISTS (SELECT 1 FROM "coder" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "coder" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:coder: the key is taken'); END;

CREATE TABLE "coder_clock" (
    "id" varchar NOT NULL,
    "coder_id" varchar NOT NULL,
    "valid_from" varchar NOT NULL,
    "offset_seconds" integer NOT NULL,
    "uncertainty_seconds" integer NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_coder_clock" PRIMARY KEY ("id"),
    CONSTRAINT "fk_coder_clock_coder_id" FOREIGN KEY ("coder_id") REFERENCES "coder" ("id")
  );

CREATE UNIQUE INDEX "ix_coder_clock_coder_id_valid_from" ON "coder_clock" ("coder_id", "valid_from") WHERE "voided_by" IS NULL;

CREATE TRIGGER "coder_clock_no_update" BEFORE UPDATE OF "id", "coder_id", "valid_from", "offset_seconds", "uncertainty_seconds" ON "coder_clock" BEGIN SELECT RAISE(ABORT, 'fact:coder_clock: rows are never changed'); END;

CREATE TRIGGER "coder_clock_no_delete" BEFORE DELETE ON "coder_clock" BEGIN SELECT RAISE(ABORT, 'fact:coder_clock: rows are never deleted'); END;

CREATE TRIGGER "coder_clock_no_replace" BEFORE INSERT ON "coder_clock" WHEN EXISTS (SELECT 1 FROM "coder_clock" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "coder_clock" WHERE "coder_id" = NEW."coder_id" AND "valid_from" = NEW."valid_from" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:coder_clock: the key is taken'); END;

CREATE TRIGGER "coder_clock_void_once" BEFORE UPDATE OF "voided_by" ON "coder_clock" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:coder_clock: voided_by is set once'); END;

CREATE TABLE "customer_contact" (
    "customer_id" varchar NOT NULL,
    "name" varchar NOT NULL,
    "address" text NOT NULL,
    "telephone" varchar,
    CONSTRAINT "pk_customer_contact" PRIMARY KEY ("customer_id")
  );

CREATE TABLE "customer" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "gln" varchar,
    CONSTRAINT "pk_customer" PRIMARY KEY ("id"),
    CONSTRAINT "uq_customer_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_customer_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "customer_no_update" BEFORE UPDATE OF "id", "site_id", "code", "gln" ON "customer" BEGIN SELECT RAISE(ABORT, 'fact:customer: rows are never changed'); END;

CREATE TRIGGER "customer_no_delete" BEFORE DELETE ON "customer" BEGIN SELECT RAISE(ABORT, 'fact:customer: rows are never deleted'); END;

CREATE TRIGGER "customer_no_replace" BEFORE INSERT ON "customer" WHEN EXISTS (SELECT 1 FROM "customer" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "customer" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:customer: the key is taken'); END;

CREATE TABLE "dryer" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "name" varchar NOT NULL,
    CONSTRAINT "pk_dryer" PRIMARY KEY ("id"),
    CONSTRAINT "uq_dryer_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_dryer_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "dryer_no_update" BEFORE UPDATE OF "id", "site_id", "code", "name" ON "dryer" BEGIN SELECT RAISE(ABORT, 'fact:dryer: rows are never changed'); END;

CREATE TRIGGER "dryer_no_delete" BEFORE DELETE ON "dryer" BEGIN SELECT RAISE(ABORT, 'fact:dryer: rows are never deleted'); END;

CREATE TRIGGER "dryer_no_replace" BEFORE INSERT ON "dryer" WHEN EXISTS (SELECT 1 FROM "dryer" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "dryer" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:dryer: the key is taken'); END;

CREATE TABLE "grade" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "name" varchar NOT NULL,
    "tipping_rule" varchar NOT NULL,
    CONSTRAINT "pk_grade" PRIMARY KEY ("id"),
    CONSTRAINT "uq_grade_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_grade_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "grade_no_update" BEFORE UPDATE OF "id", "site_id", "code", "name", "tipping_rule" ON "grade" BEGIN SELECT RAISE(ABORT, 'fact:grade: rows are never changed'); END;

CREATE TRIGGER "grade_no_delete" BEFORE DELETE ON "grade" BEGIN SELECT RAISE(ABORT, 'fact:grade: rows are never deleted'); END;

CREATE TRIGGER "grade_no_replace" BEFORE INSERT ON "grade" WHEN EXISTS (SELECT 1 FROM "grade" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "grade" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:grade: the key is taken'); END;

CREATE TABLE "grade_specification" (
    "id" varchar NOT NULL,
    "grade_id" varchar NOT NULL,
    "valid_from" varchar NOT NULL,
    "limits" text NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_grade_specification" PRIMARY KEY ("id"),
    CONSTRAINT "fk_grade_specification_grade_id" FOREIGN KEY ("grade_id") REFERENCES "grade" ("id")
  );

CREATE UNIQUE INDEX "ix_grade_specification_grade_id_valid_from" ON "grade_specification" ("grade_id", "valid_from") WHERE "voided_by" IS NULL;

CREATE TRIGGER "grade_specification_no_update" BEFORE UPDATE OF "id", "grade_id", "valid_from", "limits" ON "grade_specification" BEGIN SELECT RAISE(ABORT, 'fact:grade_specification: rows are never changed'); END;

CREATE TRIGGER "grade_specification_no_delete" BEFORE DELETE ON "grade_specification" BEGIN SELECT RAISE(ABORT, 'fact:grade_specification: rows are never deleted'); END;

CREATE TRIGGER "grade_specification_no_replace" BEFORE INSERT ON "grade_specification" WHEN EXISTS (SELECT 1 FROM "grade_specification" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "grade_specification" WHERE "grade_id" = NEW."grade_id" AND "valid_from" = NEW."valid_from" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:grade_specification: the key is taken'); END;

CREATE TRIGGER "grade_specification_void_once" BEFORE UPDATE OF "voided_by" ON "grade_specification" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:grade_specification: voided_by is set once'); END;

CREATE TABLE "hopper" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "name" varchar NOT NULL,
    "capacity_grams" integer NOT NULL,
    "flow_model" varchar NOT NULL,
    "likely_permille" integer NOT NULL,
    CONSTRAINT "pk_hopper" PRIMARY KEY ("id"),
    CONSTRAINT "uq_hopper_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_hopper_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "hopper_no_update" BEFORE UPDATE OF "id", "site_id", "code", "name", "capacity_grams", "flow_model", "likely_permille" ON "hopper" BEGIN SELECT RAISE(ABORT, 'fact:hopper: rows are never changed'); END;

CREATE TRIGGER "hopper_no_delete" BEFORE DELETE ON "hopper" BEGIN SELECT RAISE(ABORT, 'fact:hopper: rows are never deleted'); END;

CREATE TRIGGER "hopper_no_replace" BEFORE INSERT ON "hopper" WHEN EXISTS (SELECT 1 FROM "hopper" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "hopper" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:hopper: the key is taken'); END;

CREATE TABLE "hopper_line" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "hopper_id" varchar,
    "valid_from" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_hopper_line" PRIMARY KEY ("id"),
    CONSTRAINT "fk_hopper_line_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_hopper_line_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id"),
    CONSTRAINT "fk_hopper_line_hopper_id" FOREIGN KEY ("hopper_id") REFERENCES "hopper" ("id")
  );

CREATE UNIQUE INDEX "ix_hopper_line_line_id_valid_from" ON "hopper_line" ("line_id", "valid_from") WHERE "voided_by" IS NULL;

CREATE TRIGGER "hopper_line_no_update" BEFORE UPDATE OF "id", "site_id", "line_id", "hopper_id", "valid_from" ON "hopper_line" BEGIN SELECT RAISE(ABORT, 'fact:hopper_line: rows are never changed'); END;

CREATE TRIGGER "hopper_line_no_delete" BEFORE DELETE ON "hopper_line" BEGIN SELECT RAISE(ABORT, 'fact:hopper_line: rows are never deleted'); END;

CREATE TRIGGER "hopper_line_no_replace" BEFORE INSERT ON "hopper_line" WHEN EXISTS (SELECT 1 FROM "hopper_line" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "hopper_line" WHERE "line_id" = NEW."line_id" AND "valid_from" = NEW."valid_from" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:hopper_line: the key is taken'); END;

CREATE TRIGGER "hopper_line_void_once" BEFORE UPDATE OF "voided_by" ON "hopper_line" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:hopper_line: voided_by is set once'); END;

CREATE TABLE "pack_format" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "name" varchar NOT NULL,
    "gtin" varchar NOT NULL,
    "nominal_grams" integer NOT NULL,
    "assumed_lower_milligrams" integer NOT NULL,
    "assumed_upper_milligrams" integer NOT NULL,
    "pack_tare_grams" integer NOT NULL,
    "packs_per_pallet" integer NOT NULL,
    "pallet_tare_grams" integer NOT NULL,
    "code_pattern" varchar NOT NULL,
    "best_before_months" integer,
    CONSTRAINT "pk_pack_format" PRIMARY KEY ("id"),
    CONSTRAINT "uq_pack_format_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_pack_format_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "pack_format_no_update" BEFORE UPDATE OF "id", "site_id", "code", "name", "gtin", "nominal_grams", "assumed_lower_milligrams", "assumed_upper_milligrams", "pack_tare_grams", "packs_per_pallet", "pallet_tare_grams", "code_pattern", "best_before_months" ON "pack_format" BEGIN SELECT RAISE(ABORT, 'fact:pack_format: rows are never changed'); END;

CREATE TRIGGER "pack_format_no_delete" BEFORE DELETE ON "pack_format" BEGIN SELECT RAISE(ABORT, 'fact:pack_format: rows are never deleted'); END;

CREATE TRIGGER "pack_format_no_replace" BEFORE INSERT ON "pack_format" WHEN EXISTS (SELECT 1 FROM "pack_format" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "pack_format" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:pack_format: the key is taken'); END;

CREATE TABLE "pack_format_grade" (
    "id" varchar NOT NULL,
    "format_id" varchar NOT NULL,
    "grade_id" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pack_format_grade" PRIMARY KEY ("id"),
    CONSTRAINT "fk_pack_format_grade_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id"),
    CONSTRAINT "fk_pack_format_grade_grade_id" FOREIGN KEY ("grade_id") REFERENCES "grade" ("id")
  );

CREATE UNIQUE INDEX "ix_pack_format_grade_format_id_grade_id" ON "pack_format_grade" ("format_id", "grade_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "pack_format_grade_no_update" BEFORE UPDATE OF "id", "format_id", "grade_id" ON "pack_format_grade" BEGIN SELECT RAISE(ABORT, 'fact:pack_format_grade: rows are never changed'); END;

CREATE TRIGGER "pack_format_grade_no_delete" BEFORE DELETE ON "pack_format_grade" BEGIN SELECT RAISE(ABORT, 'fact:pack_format_grade: rows are never deleted'); END;

CREATE TRIGGER "pack_format_grade_no_replace" BEFORE INSERT ON "pack_format_grade" WHEN EXISTS (SELECT 1 FROM "pack_format_grade" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "pack_format_grade" WHERE "format_id" = NEW."format_id" AND "grade_id" = NEW."grade_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:pack_format_grade: the key is taken'); END;

CREATE TRIGGER "pack_format_grade_void_once" BEFORE UPDATE OF "voided_by" ON "pack_format_grade" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:pack_format_grade: voided_by is set once'); END;

CREATE TABLE "rule_set" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "kind" varchar NOT NULL,
    "valid_from" varchar NOT NULL,
    "rules" text NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_rule_set" PRIMARY KEY ("id"),
    CONSTRAINT "fk_rule_set_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE UNIQUE INDEX "ix_rule_set_site_id_kind_valid_from" ON "rule_set" ("site_id", "kind", "valid_from") WHERE "voided_by" IS NULL;

CREATE TRIGGER "rule_set_no_update" BEFORE UPDATE OF "id", "site_id", "kind", "valid_from", "rules" ON "rule_set" BEGIN SELECT RAISE(ABORT, 'fact:rule_set: rows are never changed'); END;

CREATE TRIGGER "rule_set_no_delete" BEFORE DELETE ON "rule_set" BEGIN SELECT RAISE(ABORT, 'fact:rule_set: rows are never deleted'); END;

CREATE TRIGGER "rule_set_no_replace" BEFORE INSERT ON "rule_set" WHEN EXISTS (SELECT 1 FROM "rule_set" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "rule_set" WHERE "site_id" = NEW."site_id" AND "kind" = NEW."kind" AND "valid_from" = NEW."valid_from" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:rule_set: the key is taken'); END;

CREATE TRIGGER "rule_set_void_once" BEFORE UPDATE OF "voided_by" ON "rule_set" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:rule_set: voided_by is set once'); END;

CREATE TABLE "scale" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "name" varchar NOT NULL,
    "interval_milligrams" integer NOT NULL,
    "maximum_permissible_error_milligrams" integer NOT NULL,
    "check_every_hours" integer NOT NULL,
    CONSTRAINT "pk_scale" PRIMARY KEY ("id"),
    CONSTRAINT "uq_scale_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_scale_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "scale_no_update" BEFORE UPDATE OF "id", "site_id", "code", "name", "interval_milligrams", "maximum_permissible_error_milligrams", "check_every_hours" ON "scale" BEGIN SELECT RAISE(ABORT, 'fact:scale: rows are never changed'); END;

CREATE TRIGGER "scale_no_delete" BEFORE DELETE ON "scale" BEGIN SELECT RAISE(ABORT, 'fact:scale: rows are never deleted'); END;

CREATE TRIGGER "scale_no_replace" BEFORE INSERT ON "scale" WHEN EXISTS (SELECT 1 FROM "scale" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "scale" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:scale: the key is taken'); END;

CREATE TABLE "scale_check" (
    "id" varchar NOT NULL,
    "scale_id" varchar NOT NULL,
    "checked_at" varchar NOT NULL,
    "deviation_milligrams" integer NOT NULL,
    "passed" boolean NOT NULL,
    "person_id" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_scale_check" PRIMARY KEY ("id"),
    CONSTRAINT "fk_scale_check_scale_id" FOREIGN KEY ("scale_id") REFERENCES "scale" ("id")
  );

CREATE UNIQUE INDEX "ix_scale_check_scale_id_checked_at" ON "scale_check" ("scale_id", "checked_at") WHERE "voided_by" IS NULL;

CREATE TRIGGER "scale_check_no_update" BEFORE UPDATE OF "id", "scale_id", "checked_at", "deviation_milligrams", "passed", "person_id" ON "scale_check" BEGIN SELECT RAISE(ABORT, 'fact:scale_check: rows are never changed'); END;

CREATE TRIGGER "scale_check_no_delete" BEFORE DELETE ON "scale_check" BEGIN SELECT RAISE(ABORT, 'fact:scale_check: rows are never deleted'); END;

CREATE TRIGGER "scale_check_no_replace" BEFORE INSERT ON "scale_check" WHEN EXISTS (SELECT 1 FROM "scale_check" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "scale_check" WHERE "scale_id" = NEW."scale_id" AND "checked_at" = NEW."checked_at" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:scale_check: the key is taken'); END;

CREATE TRIGGER "scale_check_void_once" BEFORE UPDATE OF "voided_by" ON "scale_check" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:scale_check: voided_by is set once'); END;

CREATE TABLE "scale_verification" (
    "id" varchar NOT NULL,
    "scale_id" varchar NOT NULL,
    "verified_on" varchar NOT NULL,
    "verified_until_on" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_scale_verification" PRIMARY KEY ("id"),
    CONSTRAINT "fk_scale_verification_scale_id" FOREIGN KEY ("scale_id") REFERENCES "scale" ("id")
  );

CREATE UNIQUE INDEX "ix_scale_verification_scale_id_verified_on" ON "scale_verification" ("scale_id", "verified_on") WHERE "voided_by" IS NULL;

CREATE TRIGGER "scale_verification_no_update" BEFORE UPDATE OF "id", "scale_id", "verified_on", "verified_until_on" ON "scale_verification" BEGIN SELECT RAISE(ABORT, 'fact:scale_verification: rows are never changed'); END;

CREATE TRIGGER "scale_verification_no_delete" BEFORE DELETE ON "scale_verification" BEGIN SELECT RAISE(ABORT, 'fact:scale_verification: rows are never deleted'); END;

CREATE TRIGGER "scale_verification_no_replace" BEFORE INSERT ON "scale_verification" WHEN EXISTS (SELECT 1 FROM "scale_verification" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "scale_verification" WHERE "scale_id" = NEW."scale_id" AND "verified_on" = NEW."verified_on" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:scale_verification: the key is taken'); END;

CREATE TRIGGER "scale_verification_void_once" BEFORE UPDATE OF "voided_by" ON "scale_verification" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:scale_verification: voided_by is set once'); END;

CREATE TABLE "shift_pattern" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "valid_from" varchar NOT NULL,
    "pattern" text NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_shift_pattern" PRIMARY KEY ("id"),
    CONSTRAINT "fk_shift_pattern_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE UNIQUE INDEX "ix_shift_pattern_site_id_valid_from" ON "shift_pattern" ("site_id", "valid_from") WHERE "voided_by" IS NULL;

CREATE TRIGGER "shift_pattern_no_update" BEFORE UPDATE OF "id", "site_id", "valid_from", "pattern" ON "shift_pattern" BEGIN SELECT RAISE(ABORT, 'fact:shift_pattern: rows are never changed'); END;

CREATE TRIGGER "shift_pattern_no_delete" BEFORE DELETE ON "shift_pattern" BEGIN SELECT RAISE(ABORT, 'fact:shift_pattern: rows are never deleted'); END;

CREATE TRIGGER "shift_pattern_no_replace" BEFORE INSERT ON "shift_pattern" WHEN EXISTS (SELECT 1 FROM "shift_pattern" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "shift_pattern" WHERE "site_id" = NEW."site_id" AND "valid_from" = NEW."valid_from" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:shift_pattern: the key is taken'); END;

CREATE TRIGGER "shift_pattern_void_once" BEFORE UPDATE OF "voided_by" ON "shift_pattern" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:shift_pattern: voided_by is set once'); END;

CREATE TABLE "store_place" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "kind" varchar NOT NULL,
    CONSTRAINT "pk_store_place" PRIMARY KEY ("id"),
    CONSTRAINT "uq_store_place_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_store_place_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "store_place_no_update" BEFORE UPDATE OF "id", "site_id", "code", "kind" ON "store_place" BEGIN SELECT RAISE(ABORT, 'fact:store_place: rows are never changed'); END;

CREATE TRIGGER "store_place_no_delete" BEFORE DELETE ON "store_place" BEGIN SELECT RAISE(ABORT, 'fact:store_place: rows are never deleted'); END;

CREATE TRIGGER "store_place_no_replace" BEFORE INSERT ON "store_place" WHEN EXISTS (SELECT 1 FROM "store_place" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "store_place" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:store_place: the key is taken'); END;

CREATE TABLE "attempt_count" (
    "name" varchar NOT NULL,
    "window_started_at" varchar NOT NULL,
    "attempts" integer NOT NULL,
    CONSTRAINT "pk_attempt_count" PRIMARY KEY ("name")
  );

CREATE TABLE "person" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    CONSTRAINT "pk_person" PRIMARY KEY ("id"),
    CONSTRAINT "uq_person_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_person_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "person_no_update" BEFORE UPDATE OF "id", "site_id", "code" ON "person" BEGIN SELECT RAISE(ABORT, 'fact:person: rows are never changed'); END;

CREATE TRIGGER "person_no_delete" BEFORE DELETE ON "person" BEGIN SELECT RAISE(ABORT, 'fact:person: rows are never deleted'); END;

CREATE TRIGGER "person_no_replace" BEFORE INSERT ON "person" WHEN EXISTS (SELECT 1 FROM "person" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "person" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:person: the key is taken'); END;

CREATE TABLE "credential" (
    "id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "kind" varchar NOT NULL,
    "secret_hash" varchar NOT NULL,
    "must_change" boolean NOT NULL,
    "set_at" varchar NOT NULL,
    CONSTRAINT "pk_credential" PRIMARY KEY ("id"),
    CONSTRAINT "fk_credential_person_id" FOREIGN KEY ("person_id") REFERENCES "person" ("id")
  );

CREATE INDEX "ix_credential_secret_hash" ON "credential" ("secret_hash");

CREATE UNIQUE INDEX "ix_credential_person_id_kind" ON "credential" ("person_id", "kind");

CREATE TABLE "device_token" (
    "device_id" varchar NOT NULL,
    "token_hash" varchar NOT NULL,
    "set_at" varchar NOT NULL,
    CONSTRAINT "pk_device_token" PRIMARY KEY ("device_id"),
    CONSTRAINT "uq_device_token_token_hash" UNIQUE ("token_hash")
  );

CREATE TABLE "device" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "kind" varchar NOT NULL,
    CONSTRAINT "pk_device" PRIMARY KEY ("id"),
    CONSTRAINT "uq_device_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_device_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "device_no_update" BEFORE UPDATE OF "id", "site_id", "code", "kind" ON "device" BEGIN SELECT RAISE(ABORT, 'fact:device: rows are never changed'); END;

CREATE TRIGGER "device_no_delete" BEFORE DELETE ON "device" BEGIN SELECT RAISE(ABORT, 'fact:device: rows are never deleted'); END;

CREATE TRIGGER "device_no_replace" BEFORE INSERT ON "device" WHEN EXISTS (SELECT 1 FROM "device" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "device" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:device: the key is taken'); END;

CREATE TABLE "person_name" (
    "person_id" varchar NOT NULL,
    "name" varchar NOT NULL,
    "language" varchar NOT NULL,
    CONSTRAINT "pk_person_name" PRIMARY KEY ("person_id")
  );

CREATE TABLE "role_holding" (
    "id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "role" varchar NOT NULL,
    "held_from" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_role_holding" PRIMARY KEY ("id"),
    CONSTRAINT "fk_role_holding_person_id" FOREIGN KEY ("person_id") REFERENCES "person" ("id")
  );

CREATE UNIQUE INDEX "ix_role_holding_person_id_role" ON "role_holding" ("person_id", "role") WHERE "voided_by" IS NULL;

CREATE TRIGGER "role_holding_no_update" BEFORE UPDATE OF "id", "person_id", "role", "held_from" ON "role_holding" BEGIN SELECT RAISE(ABORT, 'fact:role_holding: rows are never changed'); END;

CREATE TRIGGER "role_holding_no_delete" BEFORE DELETE ON "role_holding" BEGIN SELECT RAISE(ABORT, 'fact:role_holding: rows are never deleted'); END;

CREATE TRIGGER "role_holding_no_replace" BEFORE INSERT ON "role_holding" WHEN EXISTS (SELECT 1 FROM "role_holding" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "role_holding" WHERE "person_id" = NEW."person_id" AND "role" = NEW."role" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:role_holding: the key is taken'); END;

CREATE TRIGGER "role_holding_void_once" BEFORE UPDATE OF "voided_by" ON "role_holding" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:role_holding: voided_by is set once'); END;

CREATE TABLE "session" (
    "token_hash" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "device_id" varchar,
    "csrf_secret" varchar NOT NULL,
    "proof" varchar NOT NULL,
    "started_at" varchar NOT NULL,
    "ends_at" varchar NOT NULL,
    CONSTRAINT "pk_session" PRIMARY KEY ("token_hash")
  );

CREATE INDEX "ix_session_person_id" ON "session" ("person_id");

CREATE TABLE "open_point" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "cause" varchar NOT NULL,
    "facts" text NOT NULL,
    "subject_kind" varchar NOT NULL,
    "subject_id" varchar NOT NULL,
    "role" varchar NOT NULL,
    "person_id" varchar,
    "raised_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_open_point" PRIMARY KEY ("id"),
    CONSTRAINT "fk_open_point_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE INDEX "ix_open_point_subject_kind_subject_id" ON "open_point" ("subject_kind", "subject_id");

CREATE TRIGGER "open_point_no_update" BEFORE UPDATE OF "id", "site_id", "cause", "facts", "subject_kind", "subject_id", "role", "person_id", "raised_at" ON "open_point" BEGIN SELECT RAISE(ABORT, 'fact:open_point: rows are never changed'); END;

CREATE TRIGGER "open_point_no_delete" BEFORE DELETE ON "open_point" BEGIN SELECT RAISE(ABORT, 'fact:open_point: rows are never deleted'); END;

CREATE TRIGGER "open_point_no_replace" BEFORE INSERT ON "open_point" WHEN EXISTS (SELECT 1 FROM "open_point" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:open_point: the key is taken'); END;

CREATE TRIGGER "open_point_void_once" BEFORE UPDATE OF "voided_by" ON "open_point" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:open_point: voided_by is set once'); END;

CREATE TABLE "open_point_end" (
    "id" varchar NOT NULL,
    "point_id" varchar NOT NULL,
    "how" varchar NOT NULL,
    "explanation" text,
    "person_id" varchar,
    "ended_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_open_point_end" PRIMARY KEY ("id"),
    CONSTRAINT "fk_open_point_end_point_id" FOREIGN KEY ("point_id") REFERENCES "open_point" ("id")
  );

CREATE UNIQUE INDEX "ix_open_point_end_point_id" ON "open_point_end" ("point_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "open_point_end_no_update" BEFORE UPDATE OF "id", "point_id", "how", "explanation", "person_id", "ended_at" ON "open_point_end" BEGIN SELECT RAISE(ABORT, 'fact:open_point_end: rows are never changed'); END;

CREATE TRIGGER "open_point_end_no_delete" BEFORE DELETE ON "open_point_end" BEGIN SELECT RAISE(ABORT, 'fact:open_point_end: rows are never deleted'); END;

CREATE TRIGGER "open_point_end_no_replace" BEFORE INSERT ON "open_point_end" WHEN EXISTS (SELECT 1 FROM "open_point_end" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "open_point_end" WHERE "point_id" = NEW."point_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:open_point_end: the key is taken'); END;

CREATE TRIGGER "open_point_end_void_once" BEFORE UPDATE OF "voided_by" ON "open_point_end" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:open_point_end: voided_by is set once'); END;

CREATE TABLE "open_point_state" (
    "point_id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "cause" varchar NOT NULL,
    "subject_kind" varchar NOT NULL,
    "subject_id" varchar NOT NULL,
    CONSTRAINT "pk_open_point_state" PRIMARY KEY ("point_id"),
    CONSTRAINT "uq_open_point_state_site_id_cause_subject_kind_subject_id" UNIQUE ("site_id", "cause", "subject_kind", "subject_id")
  );

CREATE TABLE "bag_state" (
    "bag_id" varchar NOT NULL,
    "status" varchar NOT NULL,
    "remaining_grams" integer NOT NULL,
    "place_id" varchar,
    "changed_at" varchar NOT NULL,
    CONSTRAINT "pk_bag_state" PRIMARY KEY ("bag_id")
  );

CREATE INDEX "ix_bag_state_status" ON "bag_state" ("status");

CREATE TABLE "dryer_run" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "dryer_id" varchar NOT NULL,
    "grade_id" varchar NOT NULL,
    "number" varchar NOT NULL,
    "started_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_dryer_run" PRIMARY KEY ("id"),
    CONSTRAINT "uq_dryer_run_site_id_number" UNIQUE ("site_id", "number"),
    CONSTRAINT "fk_dryer_run_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_dryer_run_dryer_id" FOREIGN KEY ("dryer_id") REFERENCES "dryer" ("id"),
    CONSTRAINT "fk_dryer_run_grade_id" FOREIGN KEY ("grade_id") REFERENCES "grade" ("id")
  );

CREATE TRIGGER "dryer_run_no_update" BEFORE UPDATE OF "id", "site_id", "dryer_id", "grade_id", "number", "started_at" ON "dryer_run" BEGIN SELECT RAISE(ABORT, 'fact:dryer_run: rows are never changed'); END;

CREATE TRIGGER "dryer_run_no_delete" BEFORE DELETE ON "dryer_run" BEGIN SELECT RAISE(ABORT, 'fact:dryer_run: rows are never deleted'); END;

CREATE TRIGGER "dryer_run_no_replace" BEFORE INSERT ON "dryer_run" WHEN EXISTS (SELECT 1 FROM "dryer_run" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "dryer_run" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:dryer_run: the key is taken'); END;

CREATE TRIGGER "dryer_run_void_once" BEFORE UPDATE OF "voided_by" ON "dryer_run" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:dryer_run: voided_by is set once'); END;

CREATE TABLE "goods_receipt" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "grade_id" varchar NOT NULL,
    "number" varchar NOT NULL,
    "supplier_code" varchar NOT NULL,
    "supplier_lot" varchar NOT NULL,
    "document_number" varchar NOT NULL,
    "received_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_goods_receipt" PRIMARY KEY ("id"),
    CONSTRAINT "uq_goods_receipt_site_id_number" UNIQUE ("site_id", "number"),
    CONSTRAINT "fk_goods_receipt_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_goods_receipt_grade_id" FOREIGN KEY ("grade_id") REFERENCES "grade" ("id")
  );

CREATE TRIGGER "goods_receipt_no_update" BEFORE UPDATE OF "id", "site_id", "grade_id", "number", "supplier_code", "supplier_lot", "document_number", "received_at" ON "goods_receipt" BEGIN SELECT RAISE(ABORT, 'fact:goods_receipt: rows are never changed'); END;

CREATE TRIGGER "goods_receipt_no_delete" BEFORE DELETE ON "goods_receipt" BEGIN SELECT RAISE(ABORT, 'fact:goods_receipt: rows are never deleted'); END;

CREATE TRIGGER "goods_receipt_no_replace" BEFORE INSERT ON "goods_receipt" WHEN EXISTS (SELECT 1 FROM "goods_receipt" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "goods_receipt" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:goods_receipt: the key is taken'); END;

CREATE TRIGGER "goods_receipt_void_once" BEFORE UPDATE OF "voided_by" ON "goods_receipt" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:goods_receipt: voided_by is set once'); END;

CREATE TABLE "bulk_bag" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "number" varchar NOT NULL,
    "sscc" varchar NOT NULL,
    "origin" varchar NOT NULL,
    "dryer_run_id" varchar,
    "receipt_id" varchar,
    "intended_grade_id" varchar NOT NULL,
    "liner_lot" varchar,
    "safe_load_grams" integer NOT NULL,
    "fill_started_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_bulk_bag" PRIMARY KEY ("id"),
    CONSTRAINT "uq_bulk_bag_sscc" UNIQUE ("sscc"),
    CONSTRAINT "uq_bulk_bag_site_id_number" UNIQUE ("site_id", "number"),
    CONSTRAINT "fk_bulk_bag_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_bulk_bag_dryer_run_id" FOREIGN KEY ("dryer_run_id") REFERENCES "dryer_run" ("id"),
    CONSTRAINT "fk_bulk_bag_receipt_id" FOREIGN KEY ("receipt_id") REFERENCES "goods_receipt" ("id"),
    CONSTRAINT "fk_bulk_bag_intended_grade_id" FOREIGN KEY ("intended_grade_id") REFERENCES "grade" ("id")
  );

CREATE INDEX "ix_bulk_bag_site_id_id" ON "bulk_bag" ("site_id", "id");

CREATE INDEX "ix_bulk_bag_dryer_run_id" ON "bulk_bag" ("dryer_run_id");

CREATE TRIGGER "bulk_bag_no_update" BEFORE UPDATE OF "id", "site_id", "number", "sscc", "origin", "dryer_run_id", "receipt_id", "intended_grade_id", "liner_lot", "safe_load_grams", "fill_started_at" ON "bulk_bag" BEGIN SELECT RAISE(ABORT, 'fact:bulk_bag: rows are never changed'); END;

CREATE TRIGGER "bulk_bag_no_delete" BEFORE DELETE ON "bulk_bag" BEGIN SELECT RAISE(ABORT, 'fact:bulk_bag: rows are never deleted'); END;

CREATE TRIGGER "bulk_bag_no_replace" BEFORE INSERT ON "bulk_bag" WHEN EXISTS (SELECT 1 FROM "bulk_bag" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "bulk_bag" WHERE "sscc" = NEW."sscc") OR EXISTS (SELECT 1 FROM "bulk_bag" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:bulk_bag: the key is taken'); END;

CREATE TRIGGER "bulk_bag_void_once" BEFORE UPDATE OF "voided_by" ON "bulk_bag" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:bulk_bag: voided_by is set once'); END;

CREATE TABLE "bag_weighing" (
    "id" varchar NOT NULL,
    "bag_id" varchar NOT NULL,
    "occasion" varchar NOT NULL,
    "gross_grams" integer NOT NULL,
    "tare_grams" integer NOT NULL,
    "net_grams" integer NOT NULL,
    "is_preset_tare" boolean NOT NULL,
    "scale_id" varchar NOT NULL,
    "weighed_at" varchar NOT NULL,
    "is_doubtful" boolean NOT NULL,
    "person_id" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_bag_weighing" PRIMARY KEY ("id"),
    CONSTRAINT "fk_bag_weighing_bag_id" FOREIGN KEY ("bag_id") REFERENCES "bulk_bag" ("id"),
    CONSTRAINT "fk_bag_weighing_scale_id" FOREIGN KEY ("scale_id") REFERENCES "scale" ("id")
  );

CREATE INDEX "ix_bag_weighing_weighed_at" ON "bag_weighing" ("weighed_at");

CREATE INDEX "ix_bag_weighing_bag_id" ON "bag_weighing" ("bag_id");

CREATE TRIGGER "bag_weighing_no_update" BEFORE UPDATE OF "id", "bag_id", "occasion", "gross_grams", "tare_grams", "net_grams", "is_preset_tare", "scale_id", "weighed_at", "is_doubtful", "person_id" ON "bag_weighing" BEGIN SELECT RAISE(ABORT, 'fact:bag_weighing: rows are never changed'); END;

CREATE TRIGGER "bag_weighing_no_delete" BEFORE DELETE ON "bag_weighing" BEGIN SELECT RAISE(ABORT, 'fact:bag_weighing: rows are never deleted'); END;

CREATE TRIGGER "bag_weighing_no_replace" BEFORE INSERT ON "bag_weighing" WHEN EXISTS (SELECT 1 FROM "bag_weighing" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:bag_weighing: the key is taken'); END;

CREATE TRIGGER "bag_weighing_void_once" BEFORE UPDATE OF "voided_by" ON "bag_weighing" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:bag_weighing: voided_by is set once'); END;

CREATE TABLE "bag_move" (
    "id" varchar NOT NULL,
    "bag_id" varchar NOT NULL,
    "place_id" varchar NOT NULL,
    "moved_at" varchar NOT NULL,
    "person_id" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_bag_move" PRIMARY KEY ("id"),
    CONSTRAINT "fk_bag_move_bag_id" FOREIGN KEY ("bag_id") REFERENCES "bulk_bag" ("id"),
    CONSTRAINT "fk_bag_move_place_id" FOREIGN KEY ("place_id") REFERENCES "store_place" ("id")
  );

CREATE INDEX "ix_bag_move_bag_id" ON "bag_move" ("bag_id");

CREATE TRIGGER "bag_move_no_update" BEFORE UPDATE OF "id", "bag_id", "place_id", "moved_at", "person_id" ON "bag_move" BEGIN SELECT RAISE(ABORT, 'fact:bag_move: rows are never changed'); END;

CREATE TRIGGER "bag_move_no_delete" BEFORE DELETE ON "bag_move" BEGIN SELECT RAISE(ABORT, 'fact:bag_move: rows are never deleted'); END;

CREATE TRIGGER "bag_move_no_replace" BEFORE INSERT ON "bag_move" WHEN EXISTS (SELECT 1 FROM "bag_move" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:bag_move: the key is taken'); END;

CREATE TRIGGER "bag_move_void_once" BEFORE UPDATE OF "voided_by" ON "bag_move" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:bag_move: voided_by is set once'); END;

CREATE TABLE "dryer_run_end" (
    "id" varchar NOT NULL,
    "dryer_run_id" varchar NOT NULL,
    "ended_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_dryer_run_end" PRIMARY KEY ("id"),
    CONSTRAINT "fk_dryer_run_end_dryer_run_id" FOREIGN KEY ("dryer_run_id") REFERENCES "dryer_run" ("id")
  );

CREATE UNIQUE INDEX "ix_dryer_run_end_dryer_run_id" ON "dryer_run_end" ("dryer_run_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "dryer_run_end_no_update" BEFORE UPDATE OF "id", "dryer_run_id", "ended_at" ON "dryer_run_end" BEGIN SELECT RAISE(ABORT, 'fact:dryer_run_end: rows are never changed'); END;

CREATE TRIGGER "dryer_run_end_no_delete" BEFORE DELETE ON "dryer_run_end" BEGIN SELECT RAISE(ABORT, 'fact:dryer_run_end: rows are never deleted'); END;

CREATE TRIGGER "dryer_run_end_no_replace" BEFORE INSERT ON "dryer_run_end" WHEN EXISTS (SELECT 1 FROM "dryer_run_end" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "dryer_run_end" WHERE "dryer_run_id" = NEW."dryer_run_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:dryer_run_end: the key is taken'); END;

CREATE TRIGGER "dryer_run_end_void_once" BEFORE UPDATE OF "voided_by" ON "dryer_run_end" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:dryer_run_end: voided_by is set once'); END;

CREATE TABLE "sample" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "number" varchar NOT NULL,
    "stands_for" varchar NOT NULL,
    "bag_id" varchar,
    "dryer_id" varchar,
    "from_at" varchar,
    "until_at" varchar,
    "taken_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_sample" PRIMARY KEY ("id"),
    CONSTRAINT "uq_sample_site_id_number" UNIQUE ("site_id", "number"),
    CONSTRAINT "fk_sample_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_sample_bag_id" FOREIGN KEY ("bag_id") REFERENCES "bulk_bag" ("id"),
    CONSTRAINT "fk_sample_dryer_id" FOREIGN KEY ("dryer_id") REFERENCES "dryer" ("id")
  );

CREATE INDEX "ix_sample_dryer_id_from_at" ON "sample" ("dryer_id", "from_at");

CREATE INDEX "ix_sample_site_id_id" ON "sample" ("site_id", "id");

CREATE INDEX "ix_sample_bag_id" ON "sample" ("bag_id");

CREATE TRIGGER "sample_no_update" BEFORE UPDATE OF "id", "site_id", "number", "stands_for", "bag_id", "dryer_id", "from_at", "until_at", "taken_at" ON "sample" BEGIN SELECT RAISE(ABORT, 'fact:sample: rows are never changed'); END;

CREATE TRIGGER "sample_no_delete" BEFORE DELETE ON "sample" BEGIN SELECT RAISE(ABORT, 'fact:sample: rows are never deleted'); END;

CREATE TRIGGER "sample_no_replace" BEFORE INSERT ON "sample" WHEN EXISTS (SELECT 1 FROM "sample" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "sample" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:sample: the key is taken'); END;

CREATE TRIGGER "sample_void_once" BEFORE UPDATE OF "voided_by" ON "sample" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:sample: voided_by is set once'); END;

CREATE TABLE "result" (
    "id" varchar NOT NULL,
    "sample_id" varchar NOT NULL,
    "property" varchar NOT NULL,
    "method" varchar NOT NULL,
    "amount" varchar NOT NULL,
    "retest_number" integer NOT NULL,
    "analysed_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_result" PRIMARY KEY ("id"),
    CONSTRAINT "fk_result_sample_id" FOREIGN KEY ("sample_id") REFERENCES "sample" ("id")
  );

CREATE UNIQUE INDEX "ix_result_sample_id_property_method_retest_number" ON "result" ("sample_id", "property", "method", "retest_number") WHERE "voided_by" IS NULL;

CREATE TRIGGER "result_no_update" BEFORE UPDATE OF "id", "sample_id", "property", "method", "amount", "retest_number", "analysed_at" ON "result" BEGIN SELECT RAISE(ABORT, 'fact:result: rows are never changed'); END;

CREATE TRIGGER "result_no_delete" BEFORE DELETE ON "result" BEGIN SELECT RAISE(ABORT, 'fact:result: rows are never deleted'); END;

CREATE TRIGGER "result_no_replace" BEFORE INSERT ON "result" WHEN EXISTS (SELECT 1 FROM "result" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "result" WHERE "sample_id" = NEW."sample_id" AND "property" = NEW."property" AND "method" = NEW."method" AND "retest_number" = NEW."retest_number" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:result: the key is taken'); END;

CREATE TRIGGER "result_void_once" BEFORE UPDATE OF "voided_by" ON "result" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:result: voided_by is set once'); END;

CREATE TABLE "decision" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "subject_kind" varchar NOT NULL,
    "subject_id" varchar NOT NULL,
    "verdict" varchar NOT NULL,
    "reason" text,
    "decided_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_decision" PRIMARY KEY ("id"),
    CONSTRAINT "fk_decision_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE INDEX "ix_decision_subject_kind_subject_id" ON "decision" ("subject_kind", "subject_id");

CREATE TRIGGER "decision_no_update" BEFORE UPDATE OF "id", "site_id", "subject_kind", "subject_id", "verdict", "reason", "decided_at" ON "decision" BEGIN SELECT RAISE(ABORT, 'fact:decision: rows are never changed'); END;

CREATE TRIGGER "decision_no_delete" BEFORE DELETE ON "decision" BEGIN SELECT RAISE(ABORT, 'fact:decision: rows are never deleted'); END;

CREATE TRIGGER "decision_no_replace" BEFORE INSERT ON "decision" WHEN EXISTS (SELECT 1 FROM "decision" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:decision: the key is taken'); END;

CREATE TRIGGER "decision_void_once" BEFORE UPDATE OF "voided_by" ON "decision" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:decision: voided_by is set once'); END;

CREATE TABLE "grade_assignment" (
    "id" varchar NOT NULL,
    "bag_id" varchar NOT NULL,
    "grade_id" varchar NOT NULL,
    "reason" text NOT NULL,
    "assigned_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_grade_assignment" PRIMARY KEY ("id"),
    CONSTRAINT "fk_grade_assignment_bag_id" FOREIGN KEY ("bag_id") REFERENCES "bulk_bag" ("id"),
    CONSTRAINT "fk_grade_assignment_grade_id" FOREIGN KEY ("grade_id") REFERENCES "grade" ("id")
  );

CREATE INDEX "ix_grade_assignment_bag_id" ON "grade_assignment" ("bag_id");

CREATE TRIGGER "grade_assignment_no_update" BEFORE UPDATE OF "id", "bag_id", "grade_id", "reason", "assigned_at" ON "grade_assignment" BEGIN SELECT RAISE(ABORT, 'fact:grade_assignment: rows are never changed'); END;

CREATE TRIGGER "grade_assignment_no_delete" BEFORE DELETE ON "grade_assignment" BEGIN SELECT RAISE(ABORT, 'fact:grade_assignment: rows are never deleted'); END;

CREATE TRIGGER "grade_assignment_no_replace" BEFORE INSERT ON "grade_assignment" WHEN EXISTS (SELECT 1 FROM "grade_assignment" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:grade_assignment: the key is taken'); END;

CREATE TRIGGER "grade_assignment_void_once" BEFORE UPDATE OF "voided_by" ON "grade_assignment" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:grade_assignment: voided_by is set once'); END;

CREATE TABLE "hold" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "number" varchar NOT NULL,
    "scope_kind" varchar NOT NULL,
    "scope_id" varchar NOT NULL,
    "from_count" integer,
    "to_count" integer,
    "reason" text NOT NULL,
    "placed_at" varchar NOT NULL,
    "voided_by" varchar, "from_at" varchar, "until_at" varchar,
    CONSTRAINT "pk_hold" PRIMARY KEY ("id"),
    CONSTRAINT "uq_hold_site_id_number" UNIQUE ("site_id", "number"),
    CONSTRAINT "fk_hold_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE INDEX "ix_hold_scope_kind_scope_id" ON "hold" ("scope_kind", "scope_id");

CREATE TRIGGER "hold_no_update" BEFORE UPDATE OF "id", "site_id", "number", "scope_kind", "scope_id", "from_count", "to_count", "reason", "placed_at" ON "hold" BEGIN SELECT RAISE(ABORT, 'fact:hold: rows are never changed'); END;

CREATE TRIGGER "hold_no_delete" BEFORE DELETE ON "hold" BEGIN SELECT RAISE(ABORT, 'fact:hold: rows are never deleted'); END;

CREATE TRIGGER "hold_no_replace" BEFORE INSERT ON "hold" WHEN EXISTS (SELECT 1 FROM "hold" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "hold" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:hold: the key is taken'); END;

CREATE TRIGGER "hold_void_once" BEFORE UPDATE OF "voided_by" ON "hold" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:hold: voided_by is set once'); END;

CREATE TABLE "hold_class" (
    "id" varchar NOT NULL,
    "hold_id" varchar NOT NULL,
    "hazard" varchar NOT NULL,
    "reason" text NOT NULL,
    "set_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_hold_class" PRIMARY KEY ("id"),
    CONSTRAINT "fk_hold_class_hold_id" FOREIGN KEY ("hold_id") REFERENCES "hold" ("id")
  );

CREATE INDEX "ix_hold_class_hold_id" ON "hold_class" ("hold_id");

CREATE TRIGGER "hold_class_no_update" BEFORE UPDATE OF "id", "hold_id", "hazard", "reason", "set_at" ON "hold_class" BEGIN SELECT RAISE(ABORT, 'fact:hold_class: rows are never changed'); END;

CREATE TRIGGER "hold_class_no_delete" BEFORE DELETE ON "hold_class" BEGIN SELECT RAISE(ABORT, 'fact:hold_class: rows are never deleted'); END;

CREATE TRIGGER "hold_class_no_replace" BEFORE INSERT ON "hold_class" WHEN EXISTS (SELECT 1 FROM "hold_class" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:hold_class: the key is taken'); END;

CREATE TRIGGER "hold_class_void_once" BEFORE UPDATE OF "voided_by" ON "hold_class" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:hold_class: voided_by is set once'); END;

CREATE TABLE "hold_lift" (
    "id" varchar NOT NULL,
    "hold_id" varchar NOT NULL,
    "reason" text NOT NULL,
    "lifted_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_hold_lift" PRIMARY KEY ("id"),
    CONSTRAINT "fk_hold_lift_hold_id" FOREIGN KEY ("hold_id") REFERENCES "hold" ("id")
  );

CREATE UNIQUE INDEX "ix_hold_lift_hold_id" ON "hold_lift" ("hold_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "hold_lift_no_update" BEFORE UPDATE OF "id", "hold_id", "reason", "lifted_at" ON "hold_lift" BEGIN SELECT RAISE(ABORT, 'fact:hold_lift: rows are never changed'); END;

CREATE TRIGGER "hold_lift_no_delete" BEFORE DELETE ON "hold_lift" BEGIN SELECT RAISE(ABORT, 'fact:hold_lift: rows are never deleted'); END;

CREATE TRIGGER "hold_lift_no_replace" BEFORE INSERT ON "hold_lift" WHEN EXISTS (SELECT 1 FROM "hold_lift" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "hold_lift" WHERE "hold_id" = NEW."hold_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:hold_lift: the key is taken'); END;

CREATE TRIGGER "hold_lift_void_once" BEFORE UPDATE OF "voided_by" ON "hold_lift" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:hold_lift: voided_by is set once'); END;

CREATE TABLE "lot" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "format_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "search_code" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_lot" PRIMARY KEY ("id"),
    CONSTRAINT "uq_lot_format_id_code" UNIQUE ("format_id", "code"),
    CONSTRAINT "fk_lot_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_lot_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id")
  );

CREATE INDEX "ix_lot_search_code" ON "lot" ("search_code");

CREATE TRIGGER "lot_no_update" BEFORE UPDATE OF "id", "site_id", "format_id", "code", "search_code" ON "lot" BEGIN SELECT RAISE(ABORT, 'fact:lot: rows are never changed'); END;

CREATE TRIGGER "lot_no_delete" BEFORE DELETE ON "lot" BEGIN SELECT RAISE(ABORT, 'fact:lot: rows are never deleted'); END;

CREATE TRIGGER "lot_no_replace" BEFORE INSERT ON "lot" WHEN EXISTS (SELECT 1 FROM "lot" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "lot" WHERE "format_id" = NEW."format_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:lot: the key is taken'); END;

CREATE TRIGGER "lot_void_once" BEFORE UPDATE OF "voided_by" ON "lot" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:lot: voided_by is set once'); END;

CREATE TABLE "packing_run" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "number" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "format_id" varchar NOT NULL,
    "started_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_packing_run" PRIMARY KEY ("id"),
    CONSTRAINT "uq_packing_run_site_id_number" UNIQUE ("site_id", "number"),
    CONSTRAINT "fk_packing_run_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_packing_run_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id"),
    CONSTRAINT "fk_packing_run_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id")
  );

CREATE INDEX "ix_packing_run_line_id_started_at" ON "packing_run" ("line_id", "started_at");

CREATE TRIGGER "packing_run_no_update" BEFORE UPDATE OF "id", "site_id", "number", "line_id", "format_id", "started_at" ON "packing_run" BEGIN SELECT RAISE(ABORT, 'fact:packing_run: rows are never changed'); END;

CREATE TRIGGER "packing_run_no_delete" BEFORE DELETE ON "packing_run" BEGIN SELECT RAISE(ABORT, 'fact:packing_run: rows are never deleted'); END;

CREATE TRIGGER "packing_run_no_replace" BEFORE INSERT ON "packing_run" WHEN EXISTS (SELECT 1 FROM "packing_run" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "packing_run" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:packing_run: the key is taken'); END;

CREATE TRIGGER "packing_run_void_once" BEFORE UPDATE OF "voided_by" ON "packing_run" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:packing_run: voided_by is set once'); END;

CREATE TABLE "coder_change" (
    "id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "coder_id" varchar NOT NULL,
    "lot_id" varchar NOT NULL,
    "first_pack" integer NOT NULL,
    "changed_at" varchar NOT NULL,
    "intended_code" varchar NOT NULL,
    "is_as_intended" boolean NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_coder_change" PRIMARY KEY ("id"),
    CONSTRAINT "fk_coder_change_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id"),
    CONSTRAINT "fk_coder_change_coder_id" FOREIGN KEY ("coder_id") REFERENCES "coder" ("id"),
    CONSTRAINT "fk_coder_change_lot_id" FOREIGN KEY ("lot_id") REFERENCES "lot" ("id")
  );

CREATE INDEX "ix_coder_change_lot_id" ON "coder_change" ("lot_id");

CREATE INDEX "ix_coder_change_run_id_first_pack" ON "coder_change" ("run_id", "first_pack");

CREATE TRIGGER "coder_change_no_update" BEFORE UPDATE OF "id", "run_id", "coder_id", "lot_id", "first_pack", "changed_at", "intended_code", "is_as_intended" ON "coder_change" BEGIN SELECT RAISE(ABORT, 'fact:coder_change: rows are never changed'); END;

CREATE TRIGGER "coder_change_no_delete" BEFORE DELETE ON "coder_change" BEGIN SELECT RAISE(ABORT, 'fact:coder_change: rows are never deleted'); END;

CREATE TRIGGER "coder_change_no_replace" BEFORE INSERT ON "coder_change" WHEN EXISTS (SELECT 1 FROM "coder_change" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:coder_change: the key is taken'); END;

CREATE TRIGGER "coder_change_void_once" BEFORE UPDATE OF "voided_by" ON "coder_change" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:coder_change: voided_by is set once'); END;

CREATE TABLE "film_lot" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "supplier_code" varchar NOT NULL,
    "kind" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_film_lot" PRIMARY KEY ("id"),
    CONSTRAINT "uq_film_lot_site_id_code" UNIQUE ("site_id", "code"),
    CONSTRAINT "fk_film_lot_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE TRIGGER "film_lot_no_update" BEFORE UPDATE OF "id", "site_id", "code", "supplier_code", "kind" ON "film_lot" BEGIN SELECT RAISE(ABORT, 'fact:film_lot: rows are never changed'); END;

CREATE TRIGGER "film_lot_no_delete" BEFORE DELETE ON "film_lot" BEGIN SELECT RAISE(ABORT, 'fact:film_lot: rows are never deleted'); END;

CREATE TRIGGER "film_lot_no_replace" BEFORE INSERT ON "film_lot" WHEN EXISTS (SELECT 1 FROM "film_lot" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "film_lot" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:film_lot: the key is taken'); END;

CREATE TRIGGER "film_lot_void_once" BEFORE UPDATE OF "voided_by" ON "film_lot" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:film_lot: voided_by is set once'); END;

CREATE TABLE "film_use" (
    "id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "film_lot_id" varchar NOT NULL,
    "first_pack" integer NOT NULL,
    "fitted_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_film_use" PRIMARY KEY ("id"),
    CONSTRAINT "fk_film_use_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id"),
    CONSTRAINT "fk_film_use_film_lot_id" FOREIGN KEY ("film_lot_id") REFERENCES "film_lot" ("id")
  );

CREATE INDEX "ix_film_use_film_lot_id" ON "film_use" ("film_lot_id");

CREATE INDEX "ix_film_use_run_id_first_pack" ON "film_use" ("run_id", "first_pack");

CREATE TRIGGER "film_use_no_update" BEFORE UPDATE OF "id", "run_id", "film_lot_id", "first_pack", "fitted_at" ON "film_use" BEGIN SELECT RAISE(ABORT, 'fact:film_use: rows are never changed'); END;

CREATE TRIGGER "film_use_no_delete" BEFORE DELETE ON "film_use" BEGIN SELECT RAISE(ABORT, 'fact:film_use: rows are never deleted'); END;

CREATE TRIGGER "film_use_no_replace" BEFORE INSERT ON "film_use" WHEN EXISTS (SELECT 1 FROM "film_use" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:film_use: the key is taken'); END;

CREATE TRIGGER "film_use_void_once" BEFORE UPDATE OF "voided_by" ON "film_use" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:film_use: voided_by is set once'); END;

CREATE TABLE "line_stop" (
    "id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "reason" varchar NOT NULL,
    "stopped_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_line_stop" PRIMARY KEY ("id"),
    CONSTRAINT "fk_line_stop_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id")
  );

CREATE INDEX "ix_line_stop_run_id" ON "line_stop" ("run_id");

CREATE TRIGGER "line_stop_no_update" BEFORE UPDATE OF "id", "run_id", "reason", "stopped_at" ON "line_stop" BEGIN SELECT RAISE(ABORT, 'fact:line_stop: rows are never changed'); END;

CREATE TRIGGER "line_stop_no_delete" BEFORE DELETE ON "line_stop" BEGIN SELECT RAISE(ABORT, 'fact:line_stop: rows are never deleted'); END;

CREATE TRIGGER "line_stop_no_replace" BEFORE INSERT ON "line_stop" WHEN EXISTS (SELECT 1 FROM "line_stop" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:line_stop: the key is taken'); END;

CREATE TRIGGER "line_stop_void_once" BEFORE UPDATE OF "voided_by" ON "line_stop" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:line_stop: voided_by is set once'); END;

CREATE TABLE "line_restart" (
    "id" varchar NOT NULL,
    "stop_id" varchar NOT NULL,
    "started_again_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_line_restart" PRIMARY KEY ("id"),
    CONSTRAINT "fk_line_restart_stop_id" FOREIGN KEY ("stop_id") REFERENCES "line_stop" ("id")
  );

CREATE UNIQUE INDEX "ix_line_restart_stop_id" ON "line_restart" ("stop_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "line_restart_no_update" BEFORE UPDATE OF "id", "stop_id", "started_again_at" ON "line_restart" BEGIN SELECT RAISE(ABORT, 'fact:line_restart: rows are never changed'); END;

CREATE TRIGGER "line_restart_no_delete" BEFORE DELETE ON "line_restart" BEGIN SELECT RAISE(ABORT, 'fact:line_restart: rows are never deleted'); END;

CREATE TRIGGER "line_restart_no_replace" BEFORE INSERT ON "line_restart" WHEN EXISTS (SELECT 1 FROM "line_restart" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "line_restart" WHERE "stop_id" = NEW."stop_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:line_restart: the key is taken'); END;

CREATE TRIGGER "line_restart_void_once" BEFORE UPDATE OF "voided_by" ON "line_restart" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:line_restart: voided_by is set once'); END;

CREATE TABLE "loose_count" (
    "id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "pack_count" integer NOT NULL,
    "counted_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_loose_count" PRIMARY KEY ("id"),
    CONSTRAINT "fk_loose_count_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id")
  );

CREATE INDEX "ix_loose_count_run_id" ON "loose_count" ("run_id");

CREATE TRIGGER "loose_count_no_update" BEFORE UPDATE OF "id", "run_id", "pack_count", "counted_at" ON "loose_count" BEGIN SELECT RAISE(ABORT, 'fact:loose_count: rows are never changed'); END;

CREATE TRIGGER "loose_count_no_delete" BEFORE DELETE ON "loose_count" BEGIN SELECT RAISE(ABORT, 'fact:loose_count: rows are never deleted'); END;

CREATE TRIGGER "loose_count_no_replace" BEFORE INSERT ON "loose_count" WHEN EXISTS (SELECT 1 FROM "loose_count" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:loose_count: the key is taken'); END;

CREATE TRIGGER "loose_count_void_once" BEFORE UPDATE OF "voided_by" ON "loose_count" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:loose_count: voided_by is set once'); END;

CREATE TABLE "pack_count" (
    "id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "pack_count" integer NOT NULL,
    "counted_at" varchar NOT NULL,
    "occasion" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pack_count" PRIMARY KEY ("id"),
    CONSTRAINT "fk_pack_count_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id")
  );

CREATE INDEX "ix_pack_count_run_id_counted_at" ON "pack_count" ("run_id", "counted_at");

CREATE TRIGGER "pack_count_no_update" BEFORE UPDATE OF "id", "run_id", "pack_count", "counted_at", "occasion" ON "pack_count" BEGIN SELECT RAISE(ABORT, 'fact:pack_count: rows are never changed'); END;

CREATE TRIGGER "pack_count_no_delete" BEFORE DELETE ON "pack_count" BEGIN SELECT RAISE(ABORT, 'fact:pack_count: rows are never deleted'); END;

CREATE TRIGGER "pack_count_no_replace" BEFORE INSERT ON "pack_count" WHEN EXISTS (SELECT 1 FROM "pack_count" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:pack_count: the key is taken'); END;

CREATE TRIGGER "pack_count_void_once" BEFORE UPDATE OF "voided_by" ON "pack_count" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:pack_count: voided_by is set once'); END;

CREATE TABLE "packing_run_close" (
    "id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "pack_count" integer NOT NULL,
    "closed_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_packing_run_close" PRIMARY KEY ("id"),
    CONSTRAINT "fk_packing_run_close_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id")
  );

CREATE UNIQUE INDEX "ix_packing_run_close_run_id" ON "packing_run_close" ("run_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "packing_run_close_no_update" BEFORE UPDATE OF "id", "run_id", "pack_count", "closed_at" ON "packing_run_close" BEGIN SELECT RAISE(ABORT, 'fact:packing_run_close: rows are never changed'); END;

CREATE TRIGGER "packing_run_close_no_delete" BEFORE DELETE ON "packing_run_close" BEGIN SELECT RAISE(ABORT, 'fact:packing_run_close: rows are never deleted'); END;

CREATE TRIGGER "packing_run_close_no_replace" BEFORE INSERT ON "packing_run_close" WHEN EXISTS (SELECT 1 FROM "packing_run_close" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "packing_run_close" WHERE "run_id" = NEW."run_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:packing_run_close: the key is taken'); END;

CREATE TRIGGER "packing_run_close_void_once" BEFORE UPDATE OF "voided_by" ON "packing_run_close" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:packing_run_close: voided_by is set once'); END;

CREATE TABLE "packing_run_state" (
    "run_id" varchar NOT NULL,
    "open_line_id" varchar,
    "pack_count" integer NOT NULL,
    "last_counted_at" varchar NOT NULL,
    CONSTRAINT "pk_packing_run_state" PRIMARY KEY ("run_id"),
    CONSTRAINT "uq_packing_run_state_open_line_id" UNIQUE ("open_line_id")
  );

CREATE TABLE "removal" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "kind" varchar NOT NULL,
    "run_id" varchar,
    "line_id" varchar,
    "hopper_id" varchar,
    "pack_count" integer,
    "grams" integer NOT NULL,
    "scale_id" varchar,
    "reason" varchar NOT NULL,
    "fate" varchar NOT NULL,
    "removed_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_removal" PRIMARY KEY ("id"),
    CONSTRAINT "fk_removal_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_removal_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id"),
    CONSTRAINT "fk_removal_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id"),
    CONSTRAINT "fk_removal_hopper_id" FOREIGN KEY ("hopper_id") REFERENCES "hopper" ("id"),
    CONSTRAINT "fk_removal_scale_id" FOREIGN KEY ("scale_id") REFERENCES "scale" ("id")
  );

CREATE INDEX "ix_removal_hopper_id_removed_at" ON "removal" ("hopper_id", "removed_at");

CREATE INDEX "ix_removal_run_id" ON "removal" ("run_id");

CREATE TRIGGER "removal_no_update" BEFORE UPDATE OF "id", "site_id", "kind", "run_id", "line_id", "hopper_id", "pack_count", "grams", "scale_id", "reason", "fate", "removed_at" ON "removal" BEGIN SELECT RAISE(ABORT, 'fact:removal: rows are never changed'); END;

CREATE TRIGGER "removal_no_delete" BEFORE DELETE ON "removal" BEGIN SELECT RAISE(ABORT, 'fact:removal: rows are never deleted'); END;

CREATE TRIGGER "removal_no_replace" BEFORE INSERT ON "removal" WHEN EXISTS (SELECT 1 FROM "removal" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:removal: the key is taken'); END;

CREATE TRIGGER "removal_void_once" BEFORE UPDATE OF "voided_by" ON "removal" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:removal: voided_by is set once'); END;

CREATE TABLE "mean_net" (
    "id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "scale_id" varchar,
    "sample_pack_count" integer NOT NULL,
    "mean_milligrams" integer NOT NULL,
    "lower_milligrams" integer NOT NULL,
    "upper_milligrams" integer NOT NULL,
    "net_decigrams" text NOT NULL,
    "weighed_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_mean_net" PRIMARY KEY ("id"),
    CONSTRAINT "fk_mean_net_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id"),
    CONSTRAINT "fk_mean_net_scale_id" FOREIGN KEY ("scale_id") REFERENCES "scale" ("id")
  );

CREATE INDEX "ix_mean_net_run_id" ON "mean_net" ("run_id");

CREATE TRIGGER "mean_net_no_update" BEFORE UPDATE OF "id", "run_id", "scale_id", "sample_pack_count", "mean_milligrams", "lower_milligrams", "upper_milligrams", "net_decigrams", "weighed_at" ON "mean_net" BEGIN SELECT RAISE(ABORT, 'fact:mean_net: rows are never changed'); END;

CREATE TRIGGER "mean_net_no_delete" BEFORE DELETE ON "mean_net" BEGIN SELECT RAISE(ABORT, 'fact:mean_net: rows are never deleted'); END;

CREATE TRIGGER "mean_net_no_replace" BEFORE INSERT ON "mean_net" WHEN EXISTS (SELECT 1 FROM "mean_net" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:mean_net: the key is taken'); END;

CREATE TRIGGER "mean_net_void_once" BEFORE UPDATE OF "voided_by" ON "mean_net" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:mean_net: voided_by is set once'); END;

CREATE TABLE "hopper_state" (
    "hopper_id" varchar NOT NULL,
    "period_id" varchar,
    CONSTRAINT "pk_hopper_state" PRIMARY KEY ("hopper_id")
  );

CREATE TABLE "hopper_period" (
    "id" varchar NOT NULL,
    "hopper_id" varchar NOT NULL,
    "number" integer NOT NULL,
    "started_at" varchar NOT NULL,
    "previous_period_id" varchar,
    "residue_lower_grams" integer NOT NULL,
    "residue_upper_grams" integer NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_hopper_period" PRIMARY KEY ("id"),
    CONSTRAINT "fk_hopper_period_hopper_id" FOREIGN KEY ("hopper_id") REFERENCES "hopper" ("id")
  );

CREATE UNIQUE INDEX "ix_hopper_period_hopper_id_number" ON "hopper_period" ("hopper_id", "number") WHERE "voided_by" IS NULL;

CREATE TRIGGER "hopper_period_no_update" BEFORE UPDATE OF "id", "hopper_id", "number", "started_at", "previous_period_id", "residue_lower_grams", "residue_upper_grams" ON "hopper_period" BEGIN SELECT RAISE(ABORT, 'fact:hopper_period: rows are never changed'); END;

CREATE TRIGGER "hopper_period_no_delete" BEFORE DELETE ON "hopper_period" BEGIN SELECT RAISE(ABORT, 'fact:hopper_period: rows are never deleted'); END;

CREATE TRIGGER "hopper_period_no_replace" BEFORE INSERT ON "hopper_period" WHEN EXISTS (SELECT 1 FROM "hopper_period" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "hopper_period" WHERE "hopper_id" = NEW."hopper_id" AND "number" = NEW."number" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:hopper_period: the key is taken'); END;

CREATE TRIGGER "hopper_period_void_once" BEFORE UPDATE OF "voided_by" ON "hopper_period" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:hopper_period: voided_by is set once'); END;

CREATE TABLE "level_seen" (
    "id" varchar NOT NULL,
    "period_id" varchar NOT NULL,
    "how" varchar NOT NULL,
    "lower_grams" integer NOT NULL,
    "upper_grams" integer NOT NULL,
    "seen_at" varchar NOT NULL,
    "is_late" boolean NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_level_seen" PRIMARY KEY ("id"),
    CONSTRAINT "fk_level_seen_period_id" FOREIGN KEY ("period_id") REFERENCES "hopper_period" ("id")
  );

CREATE INDEX "ix_level_seen_period_id" ON "level_seen" ("period_id");

CREATE TRIGGER "level_seen_no_update" BEFORE UPDATE OF "id", "period_id", "how", "lower_grams", "upper_grams", "seen_at", "is_late" ON "level_seen" BEGIN SELECT RAISE(ABORT, 'fact:level_seen: rows are never changed'); END;

CREATE TRIGGER "level_seen_no_delete" BEFORE DELETE ON "level_seen" BEGIN SELECT RAISE(ABORT, 'fact:level_seen: rows are never deleted'); END;

CREATE TRIGGER "level_seen_no_replace" BEFORE INSERT ON "level_seen" WHEN EXISTS (SELECT 1 FROM "level_seen" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:level_seen: the key is taken'); END;

CREATE TRIGGER "level_seen_void_once" BEFORE UPDATE OF "voided_by" ON "level_seen" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:level_seen: voided_by is set once'); END;

CREATE TABLE "proven_empty" (
    "id" varchar NOT NULL,
    "period_id" varchar NOT NULL,
    "how" varchar NOT NULL,
    "residue_grams" integer NOT NULL,
    "residue_upper_grams" integer NOT NULL,
    "second_person_id" varchar NOT NULL,
    "proven_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_proven_empty" PRIMARY KEY ("id"),
    CONSTRAINT "fk_proven_empty_period_id" FOREIGN KEY ("period_id") REFERENCES "hopper_period" ("id")
  );

CREATE UNIQUE INDEX "ix_proven_empty_period_id" ON "proven_empty" ("period_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "proven_empty_no_update" BEFORE UPDATE OF "id", "period_id", "how", "residue_grams", "residue_upper_grams", "second_person_id", "proven_at" ON "proven_empty" BEGIN SELECT RAISE(ABORT, 'fact:proven_empty: rows are never changed'); END;

CREATE TRIGGER "proven_empty_no_delete" BEFORE DELETE ON "proven_empty" BEGIN SELECT RAISE(ABORT, 'fact:proven_empty: rows are never deleted'); END;

CREATE TRIGGER "proven_empty_no_replace" BEFORE INSERT ON "proven_empty" WHEN EXISTS (SELECT 1 FROM "proven_empty" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "proven_empty" WHERE "period_id" = NEW."period_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:proven_empty: the key is taken'); END;

CREATE TRIGGER "proven_empty_void_once" BEFORE UPDATE OF "voided_by" ON "proven_empty" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:proven_empty: voided_by is set once'); END;

CREATE TABLE "rework_bin" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "number" varchar NOT NULL,
    "content" varchar NOT NULL,
    "net_grams" integer NOT NULL,
    "scale_id" varchar,
    "closed_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_rework_bin" PRIMARY KEY ("id"),
    CONSTRAINT "uq_rework_bin_site_id_number" UNIQUE ("site_id", "number"),
    CONSTRAINT "fk_rework_bin_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_rework_bin_scale_id" FOREIGN KEY ("scale_id") REFERENCES "scale" ("id")
  );

CREATE TRIGGER "rework_bin_no_update" BEFORE UPDATE OF "id", "site_id", "number", "content", "net_grams", "scale_id", "closed_at" ON "rework_bin" BEGIN SELECT RAISE(ABORT, 'fact:rework_bin: rows are never changed'); END;

CREATE TRIGGER "rework_bin_no_delete" BEFORE DELETE ON "rework_bin" BEGIN SELECT RAISE(ABORT, 'fact:rework_bin: rows are never deleted'); END;

CREATE TRIGGER "rework_bin_no_replace" BEFORE INSERT ON "rework_bin" WHEN EXISTS (SELECT 1 FROM "rework_bin" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "rework_bin" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:rework_bin: the key is taken'); END;

CREATE TRIGGER "rework_bin_void_once" BEFORE UPDATE OF "voided_by" ON "rework_bin" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:rework_bin: voided_by is set once'); END;

CREATE TABLE "rework_parent" (
    "id" varchar NOT NULL,
    "bin_id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "from_count" integer NOT NULL,
    "to_count" integer NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_rework_parent" PRIMARY KEY ("id"),
    CONSTRAINT "fk_rework_parent_bin_id" FOREIGN KEY ("bin_id") REFERENCES "rework_bin" ("id"),
    CONSTRAINT "fk_rework_parent_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id")
  );

CREATE INDEX "ix_rework_parent_run_id" ON "rework_parent" ("run_id");

CREATE INDEX "ix_rework_parent_bin_id" ON "rework_parent" ("bin_id");

CREATE TRIGGER "rework_parent_no_update" BEFORE UPDATE OF "id", "bin_id", "run_id", "from_count", "to_count" ON "rework_parent" BEGIN SELECT RAISE(ABORT, 'fact:rework_parent: rows are never changed'); END;

CREATE TRIGGER "rework_parent_no_delete" BEFORE DELETE ON "rework_parent" BEGIN SELECT RAISE(ABORT, 'fact:rework_parent: rows are never deleted'); END;

CREATE TRIGGER "rework_parent_no_replace" BEFORE INSERT ON "rework_parent" WHEN EXISTS (SELECT 1 FROM "rework_parent" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:rework_parent: the key is taken'); END;

CREATE TRIGGER "rework_parent_void_once" BEFORE UPDATE OF "voided_by" ON "rework_parent" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:rework_parent: voided_by is set once'); END;

CREATE TABLE "tip" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "period_id" varchar NOT NULL,
    "source" varchar NOT NULL,
    "bag_id" varchar,
    "bin_id" varchar,
    "net_grams" integer NOT NULL,
    "opened_at" varchar NOT NULL,
    "identified_by" varchar NOT NULL,
    "second_person_id" varchar,
    "has_happened" boolean NOT NULL,
    "is_late" boolean NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_tip" PRIMARY KEY ("id"),
    CONSTRAINT "fk_tip_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_tip_period_id" FOREIGN KEY ("period_id") REFERENCES "hopper_period" ("id"),
    CONSTRAINT "fk_tip_bag_id" FOREIGN KEY ("bag_id") REFERENCES "bulk_bag" ("id"),
    CONSTRAINT "fk_tip_bin_id" FOREIGN KEY ("bin_id") REFERENCES "rework_bin" ("id")
  );

CREATE UNIQUE INDEX "ix_tip_bin_id" ON "tip" ("bin_id") WHERE "voided_by" IS NULL;

CREATE INDEX "ix_tip_site_id_opened_at" ON "tip" ("site_id", "opened_at");

CREATE INDEX "ix_tip_bag_id" ON "tip" ("bag_id");

CREATE INDEX "ix_tip_period_id" ON "tip" ("period_id");

CREATE TRIGGER "tip_no_update" BEFORE UPDATE OF "id", "site_id", "period_id", "source", "bag_id", "bin_id", "net_grams", "opened_at", "identified_by", "second_person_id", "has_happened", "is_late" ON "tip" BEGIN SELECT RAISE(ABORT, 'fact:tip: rows are never changed'); END;

CREATE TRIGGER "tip_no_delete" BEFORE DELETE ON "tip" BEGIN SELECT RAISE(ABORT, 'fact:tip: rows are never deleted'); END;

CREATE TRIGGER "tip_no_replace" BEFORE INSERT ON "tip" WHEN EXISTS (SELECT 1 FROM "tip" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "tip" WHERE "bin_id" = NEW."bin_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:tip: the key is taken'); END;

CREATE TRIGGER "tip_void_once" BEFORE UPDATE OF "voided_by" ON "tip" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:tip: voided_by is set once'); END;

CREATE TABLE "tip_candidate" (
    "id" varchar NOT NULL,
    "tip_id" varchar NOT NULL,
    "bag_id" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_tip_candidate" PRIMARY KEY ("id"),
    CONSTRAINT "fk_tip_candidate_tip_id" FOREIGN KEY ("tip_id") REFERENCES "tip" ("id"),
    CONSTRAINT "fk_tip_candidate_bag_id" FOREIGN KEY ("bag_id") REFERENCES "bulk_bag" ("id")
  );

CREATE INDEX "ix_tip_candidate_bag_id" ON "tip_candidate" ("bag_id");

CREATE INDEX "ix_tip_candidate_tip_id" ON "tip_candidate" ("tip_id");

CREATE TRIGGER "tip_candidate_no_update" BEFORE UPDATE OF "id", "tip_id", "bag_id" ON "tip_candidate" BEGIN SELECT RAISE(ABORT, 'fact:tip_candidate: rows are never changed'); END;

CREATE TRIGGER "tip_candidate_no_delete" BEFORE DELETE ON "tip_candidate" BEGIN SELECT RAISE(ABORT, 'fact:tip_candidate: rows are never deleted'); END;

CREATE TRIGGER "tip_candidate_no_replace" BEFORE INSERT ON "tip_candidate" WHEN EXISTS (SELECT 1 FROM "tip_candidate" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:tip_candidate: the key is taken'); END;

CREATE TRIGGER "tip_candidate_void_once" BEFORE UPDATE OF "voided_by" ON "tip_candidate" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:tip_candidate: voided_by is set once'); END;

CREATE TABLE "tip_off" (
    "id" varchar NOT NULL,
    "tip_id" varchar NOT NULL,
    "off_at" varchar NOT NULL,
    "rest_grams" integer NOT NULL,
    "weighing_id" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_tip_off" PRIMARY KEY ("id"),
    CONSTRAINT "fk_tip_off_tip_id" FOREIGN KEY ("tip_id") REFERENCES "tip" ("id"),
    CONSTRAINT "fk_tip_off_weighing_id" FOREIGN KEY ("weighing_id") REFERENCES "bag_weighing" ("id")
  );

CREATE UNIQUE INDEX "ix_tip_off_tip_id" ON "tip_off" ("tip_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "tip_off_no_update" BEFORE UPDATE OF "id", "tip_id", "off_at", "rest_grams", "weighing_id" ON "tip_off" BEGIN SELECT RAISE(ABORT, 'fact:tip_off: rows are never changed'); END;

CREATE TRIGGER "tip_off_no_delete" BEFORE DELETE ON "tip_off" BEGIN SELECT RAISE(ABORT, 'fact:tip_off: rows are never deleted'); END;

CREATE TRIGGER "tip_off_no_replace" BEFORE INSERT ON "tip_off" WHEN EXISTS (SELECT 1 FROM "tip_off" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "tip_off" WHERE "tip_id" = NEW."tip_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:tip_off: the key is taken'); END;

CREATE TRIGGER "tip_off_void_once" BEFORE UPDATE OF "voided_by" ON "tip_off" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:tip_off: voided_by is set once'); END;

CREATE TABLE "pallet" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "sscc" varchar NOT NULL,
    "format_id" varchar NOT NULL,
    "built_at" varchar NOT NULL,
    "pack_count" integer NOT NULL,
    "is_full" boolean NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pallet" PRIMARY KEY ("id"),
    CONSTRAINT "uq_pallet_sscc" UNIQUE ("sscc"),
    CONSTRAINT "fk_pallet_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_pallet_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id")
  );

CREATE TRIGGER "pallet_no_update" BEFORE UPDATE OF "id", "site_id", "sscc", "format_id", "built_at", "pack_count", "is_full" ON "pallet" BEGIN SELECT RAISE(ABORT, 'fact:pallet: rows are never changed'); END;

CREATE TRIGGER "pallet_no_delete" BEFORE DELETE ON "pallet" BEGIN SELECT RAISE(ABORT, 'fact:pallet: rows are never deleted'); END;

CREATE TRIGGER "pallet_no_replace" BEFORE INSERT ON "pallet" WHEN EXISTS (SELECT 1 FROM "pallet" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "pallet" WHERE "sscc" = NEW."sscc") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:pallet: the key is taken'); END;

CREATE TRIGGER "pallet_void_once" BEFORE UPDATE OF "voided_by" ON "pallet" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:pallet: voided_by is set once'); END;

CREATE TABLE "pallet_content" (
    "id" varchar NOT NULL,
    "pallet_id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "lot_id" varchar NOT NULL,
    "from_count" integer NOT NULL,
    "to_count" integer NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pallet_content" PRIMARY KEY ("id"),
    CONSTRAINT "fk_pallet_content_pallet_id" FOREIGN KEY ("pallet_id") REFERENCES "pallet" ("id"),
    CONSTRAINT "fk_pallet_content_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id"),
    CONSTRAINT "fk_pallet_content_lot_id" FOREIGN KEY ("lot_id") REFERENCES "lot" ("id")
  );

CREATE INDEX "ix_pallet_content_lot_id" ON "pallet_content" ("lot_id");

CREATE INDEX "ix_pallet_content_run_id_from_count" ON "pallet_content" ("run_id", "from_count");

CREATE INDEX "ix_pallet_content_pallet_id" ON "pallet_content" ("pallet_id");

CREATE TRIGGER "pallet_content_no_update" BEFORE UPDATE OF "id", "pallet_id", "run_id", "lot_id", "from_count", "to_count" ON "pallet_content" BEGIN SELECT RAISE(ABORT, 'fact:pallet_content: rows are never changed'); END;

CREATE TRIGGER "pallet_content_no_delete" BEFORE DELETE ON "pallet_content" BEGIN SELECT RAISE(ABORT, 'fact:pallet_content: rows are never deleted'); END;

CREATE TRIGGER "pallet_content_no_replace" BEFORE INSERT ON "pallet_content" WHEN EXISTS (SELECT 1 FROM "pallet_content" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:pallet_content: the key is taken'); END;

CREATE TRIGGER "pallet_content_void_once" BEFORE UPDATE OF "voided_by" ON "pallet_content" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:pallet_content: voided_by is set once'); END;

CREATE TABLE "pallet_descent" (
    "id" varchar NOT NULL,
    "parent_id" varchar NOT NULL,
    "child_id" varchar NOT NULL,
    "how" varchar NOT NULL,
    "happened_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pallet_descent" PRIMARY KEY ("id"),
    CONSTRAINT "fk_pallet_descent_parent_id" FOREIGN KEY ("parent_id") REFERENCES "pallet" ("id"),
    CONSTRAINT "fk_pallet_descent_child_id" FOREIGN KEY ("child_id") REFERENCES "pallet" ("id")
  );

CREATE INDEX "ix_pallet_descent_child_id" ON "pallet_descent" ("child_id");

CREATE INDEX "ix_pallet_descent_parent_id" ON "pallet_descent" ("parent_id");

CREATE TRIGGER "pallet_descent_no_update" BEFORE UPDATE OF "id", "parent_id", "child_id", "how", "happened_at" ON "pallet_descent" BEGIN SELECT RAISE(ABORT, 'fact:pallet_descent: rows are never changed'); END;

CREATE TRIGGER "pallet_descent_no_delete" BEFORE DELETE ON "pallet_descent" BEGIN SELECT RAISE(ABORT, 'fact:pallet_descent: rows are never deleted'); END;

CREATE TRIGGER "pallet_descent_no_replace" BEFORE INSERT ON "pallet_descent" WHEN EXISTS (SELECT 1 FROM "pallet_descent" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:pallet_descent: the key is taken'); END;

CREATE TRIGGER "pallet_descent_void_once" BEFORE UPDATE OF "voided_by" ON "pallet_descent" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:pallet_descent: voided_by is set once'); END;

CREATE TABLE "pallet_move" (
    "id" varchar NOT NULL,
    "pallet_id" varchar NOT NULL,
    "place_id" varchar NOT NULL,
    "moved_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pallet_move" PRIMARY KEY ("id"),
    CONSTRAINT "fk_pallet_move_pallet_id" FOREIGN KEY ("pallet_id") REFERENCES "pallet" ("id"),
    CONSTRAINT "fk_pallet_move_place_id" FOREIGN KEY ("place_id") REFERENCES "store_place" ("id")
  );

CREATE INDEX "ix_pallet_move_pallet_id" ON "pallet_move" ("pallet_id");

CREATE TRIGGER "pallet_move_no_update" BEFORE UPDATE OF "id", "pallet_id", "place_id", "moved_at" ON "pallet_move" BEGIN SELECT RAISE(ABORT, 'fact:pallet_move: rows are never changed'); END;

CREATE TRIGGER "pallet_move_no_delete" BEFORE DELETE ON "pallet_move" BEGIN SELECT RAISE(ABORT, 'fact:pallet_move: rows are never deleted'); END;

CREATE TRIGGER "pallet_move_no_replace" BEFORE INSERT ON "pallet_move" WHEN EXISTS (SELECT 1 FROM "pallet_move" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:pallet_move: the key is taken'); END;

CREATE TRIGGER "pallet_move_void_once" BEFORE UPDATE OF "voided_by" ON "pallet_move" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:pallet_move: voided_by is set once'); END;

CREATE TABLE "pallet_state" (
    "pallet_id" varchar NOT NULL,
    "status" varchar NOT NULL,
    "place_id" varchar,
    "changed_at" varchar NOT NULL,
    CONSTRAINT "pk_pallet_state" PRIMARY KEY ("pallet_id")
  );

CREATE INDEX "ix_pallet_state_status" ON "pallet_state" ("status");

CREATE TABLE "pallet_taken_apart" (
    "id" varchar NOT NULL,
    "pallet_id" varchar NOT NULL,
    "reason" text,
    "taken_apart_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pallet_taken_apart" PRIMARY KEY ("id"),
    CONSTRAINT "fk_pallet_taken_apart_pallet_id" FOREIGN KEY ("pallet_id") REFERENCES "pallet" ("id")
  );

CREATE UNIQUE INDEX "ix_pallet_taken_apart_pallet_id" ON "pallet_taken_apart" ("pallet_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "pallet_taken_apart_no_update" BEFORE UPDATE OF "id", "pallet_id", "reason", "taken_apart_at" ON "pallet_taken_apart" BEGIN SELECT RAISE(ABORT, 'fact:pallet_taken_apart: rows are never changed'); END;

CREATE TRIGGER "pallet_taken_apart_no_delete" BEFORE DELETE ON "pallet_taken_apart" BEGIN SELECT RAISE(ABORT, 'fact:pallet_taken_apart: rows are never deleted'); END;

CREATE TRIGGER "pallet_taken_apart_no_replace" BEFORE INSERT ON "pallet_taken_apart" WHEN EXISTS (SELECT 1 FROM "pallet_taken_apart" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "pallet_taken_apart" WHERE "pallet_id" = NEW."pallet_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:pallet_taken_apart: the key is taken'); END;

CREATE TRIGGER "pallet_taken_apart_void_once" BEFORE UPDATE OF "voided_by" ON "pallet_taken_apart" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:pallet_taken_apart: voided_by is set once'); END;

CREATE TABLE "delivery" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "customer_id" varchar NOT NULL,
    "order_number" varchar NOT NULL,
    "planned_on" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_delivery" PRIMARY KEY ("id"),
    CONSTRAINT "fk_delivery_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_delivery_customer_id" FOREIGN KEY ("customer_id") REFERENCES "customer" ("id")
  );

CREATE TRIGGER "delivery_no_update" BEFORE UPDATE OF "id", "site_id", "customer_id", "order_number", "planned_on" ON "delivery" BEGIN SELECT RAISE(ABORT, 'fact:delivery: rows are never changed'); END;

CREATE TRIGGER "delivery_no_delete" BEFORE DELETE ON "delivery" BEGIN SELECT RAISE(ABORT, 'fact:delivery: rows are never deleted'); END;

CREATE TRIGGER "delivery_no_replace" BEFORE INSERT ON "delivery" WHEN EXISTS (SELECT 1 FROM "delivery" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:delivery: the key is taken'); END;

CREATE TRIGGER "delivery_void_once" BEFORE UPDATE OF "voided_by" ON "delivery" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:delivery: voided_by is set once'); END;

CREATE TABLE "delivery_cancel" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "reason" text NOT NULL,
    "cancelled_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_delivery_cancel" PRIMARY KEY ("id"),
    CONSTRAINT "fk_delivery_cancel_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  );

CREATE UNIQUE INDEX "ix_delivery_cancel_delivery_id" ON "delivery_cancel" ("delivery_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "delivery_cancel_no_update" BEFORE UPDATE OF "id", "delivery_id", "reason", "cancelled_at" ON "delivery_cancel" BEGIN SELECT RAISE(ABORT, 'fact:delivery_cancel: rows are never changed'); END;

CREATE TRIGGER "delivery_cancel_no_delete" BEFORE DELETE ON "delivery_cancel" BEGIN SELECT RAISE(ABORT, 'fact:delivery_cancel: rows are never deleted'); END;

CREATE TRIGGER "delivery_cancel_no_replace" BEFORE INSERT ON "delivery_cancel" WHEN EXISTS (SELECT 1 FROM "delivery_cancel" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "delivery_cancel" WHERE "delivery_id" = NEW."delivery_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:delivery_cancel: the key is taken'); END;

CREATE TRIGGER "delivery_cancel_void_once" BEFORE UPDATE OF "voided_by" ON "delivery_cancel" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:delivery_cancel: voided_by is set once'); END;

CREATE TABLE "delivery_close" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "seal" varchar NOT NULL,
    "short_reason" text,
    "remarks" text,
    "blind_count" integer NOT NULL,
    "paper_id" varchar NOT NULL,
    "closed_at" varchar NOT NULL,
    "voided_by" varchar, "short_code" varchar,
    CONSTRAINT "pk_delivery_close" PRIMARY KEY ("id"),
    CONSTRAINT "fk_delivery_close_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  );

CREATE UNIQUE INDEX "ix_delivery_close_delivery_id" ON "delivery_close" ("delivery_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "delivery_close_no_update" BEFORE UPDATE OF "id", "delivery_id", "seal", "short_reason", "remarks", "blind_count", "paper_id", "closed_at" ON "delivery_close" BEGIN SELECT RAISE(ABORT, 'fact:delivery_close: rows are never changed'); END;

CREATE TRIGGER "delivery_close_no_delete" BEFORE DELETE ON "delivery_close" BEGIN SELECT RAISE(ABORT, 'fact:delivery_close: rows are never deleted'); END;

CREATE TRIGGER "delivery_close_no_replace" BEFORE INSERT ON "delivery_close" WHEN EXISTS (SELECT 1 FROM "delivery_close" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "delivery_close" WHERE "delivery_id" = NEW."delivery_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:delivery_close: the key is taken'); END;

CREATE TRIGGER "delivery_close_void_once" BEFORE UPDATE OF "voided_by" ON "delivery_close" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:delivery_close: voided_by is set once'); END;

CREATE TABLE "delivery_line" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "line_number" integer NOT NULL,
    "format_id" varchar,
    "grade_id" varchar,
    "ordered_count" integer NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_delivery_line" PRIMARY KEY ("id"),
    CONSTRAINT "fk_delivery_line_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id"),
    CONSTRAINT "fk_delivery_line_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id"),
    CONSTRAINT "fk_delivery_line_grade_id" FOREIGN KEY ("grade_id") REFERENCES "grade" ("id")
  );

CREATE INDEX "ix_delivery_line_delivery_id" ON "delivery_line" ("delivery_id");

CREATE TRIGGER "delivery_line_no_update" BEFORE UPDATE OF "id", "delivery_id", "line_number", "format_id", "grade_id", "ordered_count" ON "delivery_line" BEGIN SELECT RAISE(ABORT, 'fact:delivery_line: rows are never changed'); END;

CREATE TRIGGER "delivery_line_no_delete" BEFORE DELETE ON "delivery_line" BEGIN SELECT RAISE(ABORT, 'fact:delivery_line: rows are never deleted'); END;

CREATE TRIGGER "delivery_line_no_replace" BEFORE INSERT ON "delivery_line" WHEN EXISTS (SELECT 1 FROM "delivery_line" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:delivery_line: the key is taken'); END;

CREATE TRIGGER "delivery_line_void_once" BEFORE UPDATE OF "voided_by" ON "delivery_line" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:delivery_line: voided_by is set once'); END;

CREATE TABLE "delivery_state" (
    "delivery_id" varchar NOT NULL,
    "status" varchar NOT NULL,
    "loaded_count" integer NOT NULL,
    CONSTRAINT "pk_delivery_state" PRIMARY KEY ("delivery_id")
  );

CREATE TABLE "loading" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "pallet_id" varchar,
    "bag_id" varchar,
    "place" integer NOT NULL,
    "loaded_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_loading" PRIMARY KEY ("id"),
    CONSTRAINT "fk_loading_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id"),
    CONSTRAINT "fk_loading_pallet_id" FOREIGN KEY ("pallet_id") REFERENCES "pallet" ("id"),
    CONSTRAINT "fk_loading_bag_id" FOREIGN KEY ("bag_id") REFERENCES "bulk_bag" ("id")
  );

CREATE INDEX "ix_loading_bag_id" ON "loading" ("bag_id");

CREATE INDEX "ix_loading_pallet_id" ON "loading" ("pallet_id");

CREATE INDEX "ix_loading_delivery_id" ON "loading" ("delivery_id");

CREATE TRIGGER "loading_no_update" BEFORE UPDATE OF "id", "delivery_id", "pallet_id", "bag_id", "place", "loaded_at" ON "loading" BEGIN SELECT RAISE(ABORT, 'fact:loading: rows are never changed'); END;

CREATE TRIGGER "loading_no_delete" BEFORE DELETE ON "loading" BEGIN SELECT RAISE(ABORT, 'fact:loading: rows are never deleted'); END;

CREATE TRIGGER "loading_no_replace" BEFORE INSERT ON "loading" WHEN EXISTS (SELECT 1 FROM "loading" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:loading: the key is taken'); END;

CREATE TRIGGER "loading_void_once" BEFORE UPDATE OF "voided_by" ON "loading" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:loading: voided_by is set once'); END;

CREATE TABLE "unloading" (
    "id" varchar NOT NULL,
    "loading_id" varchar NOT NULL,
    "reason" text NOT NULL,
    "unloaded_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_unloading" PRIMARY KEY ("id"),
    CONSTRAINT "fk_unloading_loading_id" FOREIGN KEY ("loading_id") REFERENCES "loading" ("id")
  );

CREATE UNIQUE INDEX "ix_unloading_loading_id" ON "unloading" ("loading_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "unloading_no_update" BEFORE UPDATE OF "id", "loading_id", "reason", "unloaded_at" ON "unloading" BEGIN SELECT RAISE(ABORT, 'fact:unloading: rows are never changed'); END;

CREATE TRIGGER "unloading_no_delete" BEFORE DELETE ON "unloading" BEGIN SELECT RAISE(ABORT, 'fact:unloading: rows are never deleted'); END;

CREATE TRIGGER "unloading_no_replace" BEFORE INSERT ON "unloading" WHEN EXISTS (SELECT 1 FROM "unloading" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "unloading" WHERE "loading_id" = NEW."loading_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:unloading: the key is taken'); END;

CREATE TRIGGER "unloading_void_once" BEFORE UPDATE OF "voided_by" ON "unloading" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:unloading: voided_by is set once'); END;

CREATE TABLE "vehicle_check" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "registration" varchar NOT NULL,
    "haulier_code" varchar NOT NULL,
    "answers" text NOT NULL,
    "passed" boolean NOT NULL,
    "checked_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_vehicle_check" PRIMARY KEY ("id"),
    CONSTRAINT "fk_vehicle_check_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  );

CREATE INDEX "ix_vehicle_check_delivery_id" ON "vehicle_check" ("delivery_id");

CREATE TRIGGER "vehicle_check_no_update" BEFORE UPDATE OF "id", "delivery_id", "registration", "haulier_code", "answers", "passed", "checked_at" ON "vehicle_check" BEGIN SELECT RAISE(ABORT, 'fact:vehicle_check: rows are never changed'); END;

CREATE TRIGGER "vehicle_check_no_delete" BEFORE DELETE ON "vehicle_check" BEGIN SELECT RAISE(ABORT, 'fact:vehicle_check: rows are never deleted'); END;

CREATE TRIGGER "vehicle_check_no_replace" BEFORE INSERT ON "vehicle_check" WHEN EXISTS (SELECT 1 FROM "vehicle_check" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:vehicle_check: the key is taken'); END;

CREATE TRIGGER "vehicle_check_void_once" BEFORE UPDATE OF "voided_by" ON "vehicle_check" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:vehicle_check: voided_by is set once'); END;

CREATE TABLE "account" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "number" varchar NOT NULL,
    "hopper_id" varchar NOT NULL,
    "from_at" varchar NOT NULL,
    "until_at" varchar NOT NULL,
    "lines" text NOT NULL,
    "in_grams" bigint NOT NULL,
    "out_grams" bigint NOT NULL,
    "difference_grams" bigint,
    "standard_uncertainty_grams" bigint,
    "verdict" varchar NOT NULL,
    "stated_loss" text,
    "journal_head" varchar NOT NULL,
    "signed_by" varchar,
    "signed_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_account" PRIMARY KEY ("id"),
    CONSTRAINT "uq_account_site_id_number" UNIQUE ("site_id", "number"),
    CONSTRAINT "fk_account_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_account_hopper_id" FOREIGN KEY ("hopper_id") REFERENCES "hopper" ("id")
  );

CREATE INDEX "ix_account_hopper_id_until_at" ON "account" ("hopper_id", "until_at");

CREATE TRIGGER "account_no_update" BEFORE UPDATE OF "id", "site_id", "number", "hopper_id", "from_at", "until_at", "lines", "in_grams", "out_grams", "difference_grams", "standard_uncertainty_grams", "verdict", "stated_loss", "journal_head", "signed_by", "signed_at" ON "account" BEGIN SELECT RAISE(ABORT, 'fact:account: rows are never changed'); END;

CREATE TRIGGER "account_no_delete" BEFORE DELETE ON "account" BEGIN SELECT RAISE(ABORT, 'fact:account: rows are never deleted'); END;

CREATE TRIGGER "account_no_replace" BEFORE INSERT ON "account" WHEN EXISTS (SELECT 1 FROM "account" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "account" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:account: the key is taken'); END;

CREATE TRIGGER "account_void_once" BEFORE UPDATE OF "voided_by" ON "account" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:account: voided_by is set once'); END;

CREATE TABLE "banner_seen" (
    "id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "cause" varchar NOT NULL,
    "last_point_id" varchar NOT NULL,
    "counted_at" varchar NOT NULL,
    CONSTRAINT "pk_banner_seen" PRIMARY KEY ("id"),
    CONSTRAINT "uq_banner_seen_person_id_cause" UNIQUE ("person_id", "cause")
  );

CREATE TABLE "interruption_count" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "hour_starts_at" varchar NOT NULL,
    "cause" varchar NOT NULL,
    "shown_count" integer NOT NULL,
    "repeat_count" integer NOT NULL,
    CONSTRAINT "pk_interruption_count" PRIMARY KEY ("id"),
    CONSTRAINT "uq_interruption_count_person_id_hour_starts_at_cause" UNIQUE ("person_id", "hour_starts_at", "cause")
  );

CREATE TABLE "point_shelf" (
    "id" varchar NOT NULL,
    "point_id" varchar NOT NULL,
    "shelved_at" varchar NOT NULL,
    "until_at" varchar NOT NULL,
    "person_id" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_point_shelf" PRIMARY KEY ("id"),
    CONSTRAINT "fk_point_shelf_point_id" FOREIGN KEY ("point_id") REFERENCES "open_point" ("id")
  );

CREATE INDEX "ix_point_shelf_point_id" ON "point_shelf" ("point_id");

CREATE TRIGGER "point_shelf_no_update" BEFORE UPDATE OF "id", "point_id", "shelved_at", "until_at", "person_id" ON "point_shelf" BEGIN SELECT RAISE(ABORT, 'fact:point_shelf: rows are never changed'); END;

CREATE TRIGGER "point_shelf_no_delete" BEFORE DELETE ON "point_shelf" BEGIN SELECT RAISE(ABORT, 'fact:point_shelf: rows are never deleted'); END;

CREATE TRIGGER "point_shelf_no_replace" BEFORE INSERT ON "point_shelf" WHEN EXISTS (SELECT 1 FROM "point_shelf" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:point_shelf: the key is taken'); END;

CREATE TRIGGER "point_shelf_void_once" BEFORE UPDATE OF "voided_by" ON "point_shelf" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:point_shelf: voided_by is set once'); END;

CREATE TABLE "check_plan" (
    "id" varchar NOT NULL,
    "plan_id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "format_id" varchar,
    "kind" varchar NOT NULL,
    "station" varchar NOT NULL,
    "every_minutes" integer,
    "grace_minutes" integer NOT NULL,
    "events" text NOT NULL,
    "test_pieces" text NOT NULL,
    "needs_second_person" boolean NOT NULL,
    "is_in_force" boolean NOT NULL,
    "valid_from" varchar NOT NULL,
    "person_id" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_check_plan" PRIMARY KEY ("id"),
    CONSTRAINT "fk_check_plan_plan_id" FOREIGN KEY ("plan_id") REFERENCES "check_plan" ("id"),
    CONSTRAINT "fk_check_plan_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_check_plan_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id"),
    CONSTRAINT "fk_check_plan_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id")
  );

CREATE INDEX "ix_check_plan_line_id_kind" ON "check_plan" ("line_id", "kind");

CREATE UNIQUE INDEX "ix_check_plan_plan_id_valid_from" ON "check_plan" ("plan_id", "valid_from") WHERE "voided_by" IS NULL;

CREATE TRIGGER "check_plan_no_update" BEFORE UPDATE OF "id", "plan_id", "site_id", "line_id", "format_id", "kind", "station", "every_minutes", "grace_minutes", "events", "test_pieces", "needs_second_person", "is_in_force", "valid_from", "person_id" ON "check_plan" BEGIN SELECT RAISE(ABORT, 'fact:check_plan: rows are never changed'); END;

CREATE TRIGGER "check_plan_no_delete" BEFORE DELETE ON "check_plan" BEGIN SELECT RAISE(ABORT, 'fact:check_plan: rows are never deleted'); END;

CREATE TRIGGER "check_plan_no_replace" BEFORE INSERT ON "check_plan" WHEN EXISTS (SELECT 1 FROM "check_plan" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "check_plan" WHERE "plan_id" = NEW."plan_id" AND "valid_from" = NEW."valid_from" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:check_plan: the key is taken'); END;

CREATE TRIGGER "check_plan_void_once" BEFORE UPDATE OF "voided_by" ON "check_plan" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:check_plan: voided_by is set once'); END;

CREATE TABLE "check_plan_state" (
    "plan_id" varchar NOT NULL,
    "check_count" integer NOT NULL,
    CONSTRAINT "pk_check_plan_state" PRIMARY KEY ("plan_id")
  );

CREATE TABLE "line_check" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "plan_id" varchar NOT NULL,
    "plan_version_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "run_id" varchar,
    "bag_id" varchar,
    "occurred_at" varchar NOT NULL,
    "passed" boolean NOT NULL,
    "results" text NOT NULL,
    "read_code" varchar,
    "intended_code" varchar,
    "action" varchar,
    "note" text,
    "person_id" varchar,
    "second_person_id" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_line_check" PRIMARY KEY ("id"),
    CONSTRAINT "fk_line_check_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_line_check_plan_id" FOREIGN KEY ("plan_id") REFERENCES "check_plan" ("id"),
    CONSTRAINT "fk_line_check_plan_version_id" FOREIGN KEY ("plan_version_id") REFERENCES "check_plan" ("id"),
    CONSTRAINT "fk_line_check_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id"),
    CONSTRAINT "fk_line_check_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id"),
    CONSTRAINT "fk_line_check_bag_id" FOREIGN KEY ("bag_id") REFERENCES "bulk_bag" ("id")
  );

CREATE INDEX "ix_line_check_line_id_occurred_at" ON "line_check" ("line_id", "occurred_at");

CREATE INDEX "ix_line_check_plan_id_occurred_at" ON "line_check" ("plan_id", "occurred_at");

CREATE TRIGGER "line_check_no_update" BEFORE UPDATE OF "id", "site_id", "plan_id", "plan_version_id", "line_id", "run_id", "bag_id", "occurred_at", "passed", "results", "read_code", "intended_code", "action", "note", "person_id", "second_person_id" ON "line_check" BEGIN SELECT RAISE(ABORT, 'fact:line_check: rows are never changed'); END;

CREATE TRIGGER "line_check_no_delete" BEFORE DELETE ON "line_check" BEGIN SELECT RAISE(ABORT, 'fact:line_check: rows are never deleted'); END;

CREATE TRIGGER "line_check_no_replace" BEFORE INSERT ON "line_check" WHEN EXISTS (SELECT 1 FROM "line_check" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:line_check: the key is taken'); END;

CREATE TRIGGER "line_check_void_once" BEFORE UPDATE OF "voided_by" ON "line_check" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:line_check: voided_by is set once'); END;

CREATE TABLE "changeover" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "from_run_id" varchar NOT NULL,
    "to_format_id" varchar NOT NULL,
    "opened_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_changeover" PRIMARY KEY ("id"),
    CONSTRAINT "fk_changeover_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_changeover_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id"),
    CONSTRAINT "fk_changeover_from_run_id" FOREIGN KEY ("from_run_id") REFERENCES "packing_run" ("id"),
    CONSTRAINT "fk_changeover_to_format_id" FOREIGN KEY ("to_format_id") REFERENCES "pack_format" ("id")
  );

CREATE INDEX "ix_changeover_line_id_opened_at" ON "changeover" ("line_id", "opened_at");

CREATE TRIGGER "changeover_no_update" BEFORE UPDATE OF "id", "site_id", "line_id", "from_run_id", "to_format_id", "opened_at" ON "changeover" BEGIN SELECT RAISE(ABORT, 'fact:changeover: rows are never changed'); END;

CREATE TRIGGER "changeover_no_delete" BEFORE DELETE ON "changeover" BEGIN SELECT RAISE(ABORT, 'fact:changeover: rows are never deleted'); END;

CREATE TRIGGER "changeover_no_replace" BEFORE INSERT ON "changeover" WHEN EXISTS (SELECT 1 FROM "changeover" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:changeover: the key is taken'); END;

CREATE TRIGGER "changeover_void_once" BEFORE UPDATE OF "voided_by" ON "changeover" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:changeover: voided_by is set once'); END;

CREATE TABLE "changeover_rung" (
    "id" varchar NOT NULL,
    "changeover_id" varchar NOT NULL,
    "rung" varchar NOT NULL,
    "record_id" varchar,
    "count" integer,
    "second_person_id" varchar,
    "note" text,
    "done_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_changeover_rung" PRIMARY KEY ("id"),
    CONSTRAINT "fk_changeover_rung_changeover_id" FOREIGN KEY ("changeover_id") REFERENCES "changeover" ("id")
  );

CREATE UNIQUE INDEX "ix_changeover_rung_changeover_id_rung" ON "changeover_rung" ("changeover_id", "rung") WHERE "voided_by" IS NULL;

CREATE TRIGGER "changeover_rung_no_update" BEFORE UPDATE OF "id", "changeover_id", "rung", "record_id", "count", "second_person_id", "note", "done_at" ON "changeover_rung" BEGIN SELECT RAISE(ABORT, 'fact:changeover_rung: rows are never changed'); END;

CREATE TRIGGER "changeover_rung_no_delete" BEFORE DELETE ON "changeover_rung" BEGIN SELECT RAISE(ABORT, 'fact:changeover_rung: rows are never deleted'); END;

CREATE TRIGGER "changeover_rung_no_replace" BEFORE INSERT ON "changeover_rung" WHEN EXISTS (SELECT 1 FROM "changeover_rung" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "changeover_rung" WHERE "changeover_id" = NEW."changeover_id" AND "rung" = NEW."rung" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:changeover_rung: the key is taken'); END;

CREATE TRIGGER "changeover_rung_void_once" BEFORE UPDATE OF "voided_by" ON "changeover_rung" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:changeover_rung: voided_by is set once'); END;

CREATE TABLE "refusal_met" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "hopper_id" varchar NOT NULL,
    "bag_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "met_at" varchar NOT NULL,
    CONSTRAINT "pk_refusal_met" PRIMARY KEY ("id")
  );

CREATE INDEX "ix_refusal_met_bag_id_met_at" ON "refusal_met" ("bag_id", "met_at");

CREATE TABLE "pallet_label_check" (
    "id" varchar NOT NULL,
    "pallet_id" varchar NOT NULL,
    "pack_code" varchar,
    "checked_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pallet_label_check" PRIMARY KEY ("id"),
    CONSTRAINT "fk_pallet_label_check_pallet_id" FOREIGN KEY ("pallet_id") REFERENCES "pallet" ("id")
  );

CREATE INDEX "ix_pallet_label_check_pallet_id" ON "pallet_label_check" ("pallet_id");

CREATE TRIGGER "pallet_label_check_no_update" BEFORE UPDATE OF "id", "pallet_id", "pack_code", "checked_at" ON "pallet_label_check" BEGIN SELECT RAISE(ABORT, 'fact:pallet_label_check: rows are never changed'); END;

CREATE TRIGGER "pallet_label_check_no_delete" BEFORE DELETE ON "pallet_label_check" BEGIN SELECT RAISE(ABORT, 'fact:pallet_label_check: rows are never deleted'); END;

CREATE TRIGGER "pallet_label_check_no_replace" BEFORE INSERT ON "pallet_label_check" WHEN EXISTS (SELECT 1 FROM "pallet_label_check" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:pallet_label_check: the key is taken'); END;

CREATE TRIGGER "pallet_label_check_void_once" BEFORE UPDATE OF "voided_by" ON "pallet_label_check" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:pallet_label_check: voided_by is set once'); END;

CREATE TABLE "handover" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "production_on" varchar NOT NULL,
    "shift_code" varchar NOT NULL,
    "from_at" varchar NOT NULL,
    "until_at" varchar NOT NULL,
    "points" text NOT NULL,
    "notes" text,
    "outgoing_person_id" varchar NOT NULL,
    "signed_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_handover" PRIMARY KEY ("id"),
    CONSTRAINT "fk_handover_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_handover_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id")
  );

CREATE UNIQUE INDEX "ix_handover_line_id_from_at" ON "handover" ("line_id", "from_at") WHERE "voided_by" IS NULL;

CREATE TRIGGER "handover_no_update" BEFORE UPDATE OF "id", "site_id", "line_id", "production_on", "shift_code", "from_at", "until_at", "points", "notes", "outgoing_person_id", "signed_at" ON "handover" BEGIN SELECT RAISE(ABORT, 'fact:handover: rows are never changed'); END;

CREATE TRIGGER "handover_no_delete" BEFORE DELETE ON "handover" BEGIN SELECT RAISE(ABORT, 'fact:handover: rows are never deleted'); END;

CREATE TRIGGER "handover_no_replace" BEFORE INSERT ON "handover" WHEN EXISTS (SELECT 1 FROM "handover" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "handover" WHERE "line_id" = NEW."line_id" AND "from_at" = NEW."from_at" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:handover: the key is taken'); END;

CREATE TRIGGER "handover_void_once" BEFORE UPDATE OF "voided_by" ON "handover" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:handover: voided_by is set once'); END;

CREATE TABLE "handover_answer" (
    "id" varchar NOT NULL,
    "handover_id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "how" varchar NOT NULL,
    "agrees" boolean NOT NULL,
    "disagreement" text,
    "answered_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_handover_answer" PRIMARY KEY ("id"),
    CONSTRAINT "fk_handover_answer_handover_id" FOREIGN KEY ("handover_id") REFERENCES "handover" ("id")
  );

CREATE UNIQUE INDEX "ix_handover_answer_handover_id" ON "handover_answer" ("handover_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "handover_answer_no_update" BEFORE UPDATE OF "id", "handover_id", "person_id", "how", "agrees", "disagreement", "answered_at" ON "handover_answer" BEGIN SELECT RAISE(ABORT, 'fact:handover_answer: rows are never changed'); END;

CREATE TRIGGER "handover_answer_no_delete" BEFORE DELETE ON "handover_answer" BEGIN SELECT RAISE(ABORT, 'fact:handover_answer: rows are never deleted'); END;

CREATE TRIGGER "handover_answer_no_replace" BEFORE INSERT ON "handover_answer" WHEN EXISTS (SELECT 1 FROM "handover_answer" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "handover_answer" WHERE "handover_id" = NEW."handover_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:handover_answer: the key is taken'); END;

CREATE TRIGGER "handover_answer_void_once" BEFORE UPDATE OF "voided_by" ON "handover_answer" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:handover_answer: voided_by is set once'); END;

CREATE TRIGGER "delivery_close_no_update_short_code" BEFORE UPDATE OF "short_code" ON "delivery_close" BEGIN SELECT RAISE(ABORT, 'fact:delivery_close: rows are never changed'); END;

CREATE TABLE "blind_count" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "unit_count" integer NOT NULL,
    "change_count" integer NOT NULL,
    "counted_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_blind_count" PRIMARY KEY ("id"),
    CONSTRAINT "fk_blind_count_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  );

CREATE INDEX "ix_blind_count_delivery_id" ON "blind_count" ("delivery_id");

CREATE TRIGGER "blind_count_no_update" BEFORE UPDATE OF "id", "delivery_id", "unit_count", "change_count", "counted_at" ON "blind_count" BEGIN SELECT RAISE(ABORT, 'fact:blind_count: rows are never changed'); END;

CREATE TRIGGER "blind_count_no_delete" BEFORE DELETE ON "blind_count" BEGIN SELECT RAISE(ABORT, 'fact:blind_count: rows are never deleted'); END;

CREATE TRIGGER "blind_count_no_replace" BEFORE INSERT ON "blind_count" WHEN EXISTS (SELECT 1 FROM "blind_count" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:blind_count: the key is taken'); END;

CREATE TRIGGER "blind_count_void_once" BEFORE UPDATE OF "voided_by" ON "blind_count" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:blind_count: voided_by is set once'); END;

CREATE TABLE "refused_scan" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "scanned" text NOT NULL,
    "code" varchar NOT NULL,
    "facts" text NOT NULL,
    "refused_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_refused_scan" PRIMARY KEY ("id"),
    CONSTRAINT "fk_refused_scan_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  );

CREATE INDEX "ix_refused_scan_delivery_id" ON "refused_scan" ("delivery_id");

CREATE TRIGGER "refused_scan_no_update" BEFORE UPDATE OF "id", "delivery_id", "scanned", "code", "facts", "refused_at" ON "refused_scan" BEGIN SELECT RAISE(ABORT, 'fact:refused_scan: rows are never changed'); END;

CREATE TRIGGER "refused_scan_no_delete" BEFORE DELETE ON "refused_scan" BEGIN SELECT RAISE(ABORT, 'fact:refused_scan: rows are never deleted'); END;

CREATE TRIGGER "refused_scan_no_replace" BEFORE INSERT ON "refused_scan" WHEN EXISTS (SELECT 1 FROM "refused_scan" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:refused_scan: the key is taken'); END;

CREATE TRIGGER "refused_scan_void_once" BEFORE UPDATE OF "voided_by" ON "refused_scan" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:refused_scan: voided_by is set once'); END;

CREATE TABLE "delivery_plan" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "order_number" varchar NOT NULL,
    "planned_on" varchar NOT NULL,
    "leaves_at" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_delivery_plan" PRIMARY KEY ("id"),
    CONSTRAINT "fk_delivery_plan_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  );

CREATE INDEX "ix_delivery_plan_delivery_id" ON "delivery_plan" ("delivery_id");

CREATE TRIGGER "delivery_plan_no_update" BEFORE UPDATE OF "id", "delivery_id", "order_number", "planned_on", "leaves_at" ON "delivery_plan" BEGIN SELECT RAISE(ABORT, 'fact:delivery_plan: rows are never changed'); END;

CREATE TRIGGER "delivery_plan_no_delete" BEFORE DELETE ON "delivery_plan" BEGIN SELECT RAISE(ABORT, 'fact:delivery_plan: rows are never deleted'); END;

CREATE TRIGGER "delivery_plan_no_replace" BEFORE INSERT ON "delivery_plan" WHEN EXISTS (SELECT 1 FROM "delivery_plan" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:delivery_plan: the key is taken'); END;

CREATE TRIGGER "delivery_plan_void_once" BEFORE UPDATE OF "voided_by" ON "delivery_plan" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:delivery_plan: voided_by is set once'); END;

CREATE TABLE "delivery_departure" (
    "id" varchar NOT NULL,
    "delivery_id" varchar NOT NULL,
    "left_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_delivery_departure" PRIMARY KEY ("id"),
    CONSTRAINT "fk_delivery_departure_delivery_id" FOREIGN KEY ("delivery_id") REFERENCES "delivery" ("id")
  );

CREATE UNIQUE INDEX "ix_delivery_departure_delivery_id" ON "delivery_departure" ("delivery_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "delivery_departure_no_update" BEFORE UPDATE OF "id", "delivery_id", "left_at" ON "delivery_departure" BEGIN SELECT RAISE(ABORT, 'fact:delivery_departure: rows are never changed'); END;

CREATE TRIGGER "delivery_departure_no_delete" BEFORE DELETE ON "delivery_departure" BEGIN SELECT RAISE(ABORT, 'fact:delivery_departure: rows are never deleted'); END;

CREATE TRIGGER "delivery_departure_no_replace" BEFORE INSERT ON "delivery_departure" WHEN EXISTS (SELECT 1 FROM "delivery_departure" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "delivery_departure" WHERE "delivery_id" = NEW."delivery_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:delivery_departure: the key is taken'); END;

CREATE TRIGGER "delivery_departure_void_once" BEFORE UPDATE OF "voided_by" ON "delivery_departure" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:delivery_departure: voided_by is set once'); END;

CREATE TABLE "delivery_return" (
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
  );

CREATE INDEX "ix_delivery_return_delivery_id" ON "delivery_return" ("delivery_id");

CREATE TRIGGER "delivery_return_no_update" BEFORE UPDATE OF "id", "site_id", "delivery_id", "why", "remarks", "place_id", "returned_at" ON "delivery_return" BEGIN SELECT RAISE(ABORT, 'fact:delivery_return: rows are never changed'); END;

CREATE TRIGGER "delivery_return_no_delete" BEFORE DELETE ON "delivery_return" BEGIN SELECT RAISE(ABORT, 'fact:delivery_return: rows are never deleted'); END;

CREATE TRIGGER "delivery_return_no_replace" BEFORE INSERT ON "delivery_return" WHEN EXISTS (SELECT 1 FROM "delivery_return" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:delivery_return: the key is taken'); END;

CREATE TRIGGER "delivery_return_void_once" BEFORE UPDATE OF "voided_by" ON "delivery_return" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:delivery_return: voided_by is set once'); END;

CREATE TABLE "returned_unit" (
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
  );

CREATE INDEX "ix_returned_unit_lot_id" ON "returned_unit" ("lot_id");

CREATE UNIQUE INDEX "ix_returned_unit_loading_id" ON "returned_unit" ("loading_id") WHERE "voided_by" IS NULL;

CREATE INDEX "ix_returned_unit_return_id" ON "returned_unit" ("return_id");

CREATE TRIGGER "returned_unit_no_update" BEFORE UPDATE OF "id", "return_id", "loading_id", "lot_id", "unit_count", "credited_count" ON "returned_unit" BEGIN SELECT RAISE(ABORT, 'fact:returned_unit: rows are never changed'); END;

CREATE TRIGGER "returned_unit_no_delete" BEFORE DELETE ON "returned_unit" BEGIN SELECT RAISE(ABORT, 'fact:returned_unit: rows are never deleted'); END;

CREATE TRIGGER "returned_unit_no_replace" BEFORE INSERT ON "returned_unit" WHEN EXISTS (SELECT 1 FROM "returned_unit" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "returned_unit" WHERE "loading_id" = NEW."loading_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:returned_unit: the key is taken'); END;

CREATE TRIGGER "returned_unit_void_once" BEFORE UPDATE OF "voided_by" ON "returned_unit" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:returned_unit: voided_by is set once'); END;

CREATE TABLE "return_decision" (
    "id" varchar NOT NULL,
    "unit_id" varchar NOT NULL,
    "fate" varchar NOT NULL,
    "reason" text NOT NULL,
    "decided_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_return_decision" PRIMARY KEY ("id"),
    CONSTRAINT "fk_return_decision_unit_id" FOREIGN KEY ("unit_id") REFERENCES "returned_unit" ("id")
  );

CREATE UNIQUE INDEX "ix_return_decision_unit_id" ON "return_decision" ("unit_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "return_decision_no_update" BEFORE UPDATE OF "id", "unit_id", "fate", "reason", "decided_at" ON "return_decision" BEGIN SELECT RAISE(ABORT, 'fact:return_decision: rows are never changed'); END;

CREATE TRIGGER "return_decision_no_delete" BEFORE DELETE ON "return_decision" BEGIN SELECT RAISE(ABORT, 'fact:return_decision: rows are never deleted'); END;

CREATE TRIGGER "return_decision_no_replace" BEFORE INSERT ON "return_decision" WHEN EXISTS (SELECT 1 FROM "return_decision" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "return_decision" WHERE "unit_id" = NEW."unit_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:return_decision: the key is taken'); END;

CREATE TRIGGER "return_decision_void_once" BEFORE UPDATE OF "voided_by" ON "return_decision" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:return_decision: voided_by is set once'); END;

CREATE TABLE "entry_happening" (
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
  );

CREATE UNIQUE INDEX "ix_entry_happening_site_id_sheet_sheet_row_action" ON "entry_happening" ("site_id", "sheet", "sheet_row", "action") WHERE "voided_by" IS NULL;

CREATE TRIGGER "entry_happening_no_update" BEFORE UPDATE OF "entry_id", "site_id", "action", "how", "happened_at", "sheet", "sheet_row", "written_by" ON "entry_happening" BEGIN SELECT RAISE(ABORT, 'fact:entry_happening: rows are never changed'); END;

CREATE TRIGGER "entry_happening_no_delete" BEFORE DELETE ON "entry_happening" BEGIN SELECT RAISE(ABORT, 'fact:entry_happening: rows are never deleted'); END;

CREATE TRIGGER "entry_happening_no_replace" BEFORE INSERT ON "entry_happening" WHEN EXISTS (SELECT 1 FROM "entry_happening" WHERE "entry_id" = NEW."entry_id") OR EXISTS (SELECT 1 FROM "entry_happening" WHERE "site_id" = NEW."site_id" AND "sheet" = NEW."sheet" AND "sheet_row" = NEW."sheet_row" AND "action" = NEW."action" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:entry_happening: the key is taken'); END;

CREATE TRIGGER "entry_happening_void_once" BEFORE UPDATE OF "voided_by" ON "entry_happening" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:entry_happening: voided_by is set once'); END;

CREATE TABLE "queue_proof" (
    "token_hash" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    "device_id" varchar NOT NULL,
    "session_hash" varchar NOT NULL,
    "issued_at" varchar NOT NULL,
    "ends_at" varchar NOT NULL,
    "signed_out_at" varchar NOT NULL,
    CONSTRAINT "pk_queue_proof" PRIMARY KEY ("token_hash")
  );

CREATE INDEX "ix_queue_proof_session_hash" ON "queue_proof" ("session_hash");

CREATE INDEX "ix_queue_proof_person_id" ON "queue_proof" ("person_id");

CREATE TABLE "kept_entry" (
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
  );

CREATE INDEX "ix_kept_entry_site_id_entry_key" ON "kept_entry" ("site_id", "entry_key");

CREATE TRIGGER "kept_entry_no_update" BEFORE UPDATE OF "id", "site_id", "person_id", "device_id", "route", "address", "entry_key", "content", "how", "happened_at", "sheet", "sheet_row", "written_by", "code", "facts", "kept_at" ON "kept_entry" BEGIN SELECT RAISE(ABORT, 'fact:kept_entry: rows are never changed'); END;

CREATE TRIGGER "kept_entry_no_delete" BEFORE DELETE ON "kept_entry" BEGIN SELECT RAISE(ABORT, 'fact:kept_entry: rows are never deleted'); END;

CREATE TRIGGER "kept_entry_no_replace" BEFORE INSERT ON "kept_entry" WHEN EXISTS (SELECT 1 FROM "kept_entry" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:kept_entry: the key is taken'); END;

CREATE TRIGGER "kept_entry_void_once" BEFORE UPDATE OF "voided_by" ON "kept_entry" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:kept_entry: voided_by is set once'); END;

CREATE TABLE "sscc_block" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "device_id" varchar,
    "sheet" varchar,
    "set_aside_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_sscc_block" PRIMARY KEY ("id"),
    CONSTRAINT "fk_sscc_block_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id")
  );

CREATE INDEX "ix_sscc_block_device_id" ON "sscc_block" ("device_id");

CREATE TRIGGER "sscc_block_no_update" BEFORE UPDATE OF "id", "site_id", "device_id", "sheet", "set_aside_at" ON "sscc_block" BEGIN SELECT RAISE(ABORT, 'fact:sscc_block: rows are never changed'); END;

CREATE TRIGGER "sscc_block_no_delete" BEFORE DELETE ON "sscc_block" BEGIN SELECT RAISE(ABORT, 'fact:sscc_block: rows are never deleted'); END;

CREATE TRIGGER "sscc_block_no_replace" BEFORE INSERT ON "sscc_block" WHEN EXISTS (SELECT 1 FROM "sscc_block" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:sscc_block: the key is taken'); END;

CREATE TRIGGER "sscc_block_void_once" BEFORE UPDATE OF "voided_by" ON "sscc_block" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:sscc_block: voided_by is set once'); END;

CREATE TABLE "sscc_set_aside" (
    "sscc" varchar NOT NULL,
    "block_id" varchar NOT NULL,
    CONSTRAINT "pk_sscc_set_aside" PRIMARY KEY ("sscc"),
    CONSTRAINT "fk_sscc_set_aside_block_id" FOREIGN KEY ("block_id") REFERENCES "sscc_block" ("id")
  );

CREATE INDEX "ix_sscc_set_aside_block_id" ON "sscc_set_aside" ("block_id");

CREATE TRIGGER "sscc_set_aside_no_update" BEFORE UPDATE OF "sscc", "block_id" ON "sscc_set_aside" BEGIN SELECT RAISE(ABORT, 'fact:sscc_set_aside: rows are never changed'); END;

CREATE TRIGGER "sscc_set_aside_no_delete" BEFORE DELETE ON "sscc_set_aside" BEGIN SELECT RAISE(ABORT, 'fact:sscc_set_aside: rows are never deleted'); END;

CREATE TRIGGER "sscc_set_aside_no_replace" BEFORE INSERT ON "sscc_set_aside" WHEN EXISTS (SELECT 1 FROM "sscc_set_aside" WHERE "sscc" = NEW."sscc") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:sscc_set_aside: the key is taken'); END;

CREATE TABLE "bag_type" (
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
  );

CREATE UNIQUE INDEX "ix_bag_type_site_id_code" ON "bag_type" ("site_id", "code") WHERE "voided_by" IS NULL;

CREATE TRIGGER "bag_type_no_update" BEFORE UPDATE OF "id", "site_id", "code", "name", "usual_tare_grams", "least_tare_grams", "most_tare_grams", "safe_load_grams" ON "bag_type" BEGIN SELECT RAISE(ABORT, 'fact:bag_type: rows are never changed'); END;

CREATE TRIGGER "bag_type_no_delete" BEFORE DELETE ON "bag_type" BEGIN SELECT RAISE(ABORT, 'fact:bag_type: rows are never deleted'); END;

CREATE TRIGGER "bag_type_no_replace" BEFORE INSERT ON "bag_type" WHEN EXISTS (SELECT 1 FROM "bag_type" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "bag_type" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:bag_type: the key is taken'); END;

CREATE TRIGGER "bag_type_void_once" BEFORE UPDATE OF "voided_by" ON "bag_type" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:bag_type: voided_by is set once'); END;

CREATE TABLE "grade_usual_net" (
    "id" varchar NOT NULL,
    "grade_id" varchar NOT NULL,
    "least_net_grams" integer NOT NULL,
    "most_net_grams" integer NOT NULL,
    "set_at" varchar NOT NULL,
    CONSTRAINT "pk_grade_usual_net" PRIMARY KEY ("id"),
    CONSTRAINT "fk_grade_usual_net_grade_id" FOREIGN KEY ("grade_id") REFERENCES "grade" ("id")
  );

CREATE INDEX "ix_grade_usual_net_grade_id" ON "grade_usual_net" ("grade_id");

CREATE TRIGGER "grade_usual_net_no_update" BEFORE UPDATE OF "id", "grade_id", "least_net_grams", "most_net_grams", "set_at" ON "grade_usual_net" BEGIN SELECT RAISE(ABORT, 'fact:grade_usual_net: rows are never changed'); END;

CREATE TRIGGER "grade_usual_net_no_delete" BEFORE DELETE ON "grade_usual_net" BEGIN SELECT RAISE(ABORT, 'fact:grade_usual_net: rows are never deleted'); END;

CREATE TRIGGER "grade_usual_net_no_replace" BEFORE INSERT ON "grade_usual_net" WHEN EXISTS (SELECT 1 FROM "grade_usual_net" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:grade_usual_net: the key is taken'); END;

CREATE TABLE "site_revision" (
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
  );

CREATE INDEX "ix_site_revision_site_id" ON "site_revision" ("site_id");

CREATE TRIGGER "site_revision_no_update" BEFORE UPDATE OF "id", "site_id", "name", "time_zone", "production_day_start", "gln", "company_prefix", "sscc_extension_digit", "changed_at" ON "site_revision" BEGIN SELECT RAISE(ABORT, 'fact:site_revision: rows are never changed'); END;

CREATE TRIGGER "site_revision_no_delete" BEFORE DELETE ON "site_revision" BEGIN SELECT RAISE(ABORT, 'fact:site_revision: rows are never deleted'); END;

CREATE TRIGGER "site_revision_no_replace" BEFORE INSERT ON "site_revision" WHEN EXISTS (SELECT 1 FROM "site_revision" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:site_revision: the key is taken'); END;

CREATE TABLE "bag_type_use" (
    "id" varchar NOT NULL,
    "bag_id" varchar NOT NULL,
    "bag_type_id" varchar NOT NULL,
    CONSTRAINT "pk_bag_type_use" PRIMARY KEY ("id"),
    CONSTRAINT "uq_bag_type_use_bag_id" UNIQUE ("bag_id"),
    CONSTRAINT "fk_bag_type_use_bag_id" FOREIGN KEY ("bag_id") REFERENCES "bulk_bag" ("id"),
    CONSTRAINT "fk_bag_type_use_bag_type_id" FOREIGN KEY ("bag_type_id") REFERENCES "bag_type" ("id")
  );

CREATE TRIGGER "bag_type_use_no_update" BEFORE UPDATE OF "id", "bag_id", "bag_type_id" ON "bag_type_use" BEGIN SELECT RAISE(ABORT, 'fact:bag_type_use: rows are never changed'); END;

CREATE TRIGGER "bag_type_use_no_delete" BEFORE DELETE ON "bag_type_use" BEGIN SELECT RAISE(ABORT, 'fact:bag_type_use: rows are never deleted'); END;

CREATE TRIGGER "bag_type_use_no_replace" BEFORE INSERT ON "bag_type_use" WHEN EXISTS (SELECT 1 FROM "bag_type_use" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "bag_type_use" WHERE "bag_id" = NEW."bag_id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:bag_type_use: the key is taken'); END;

CREATE TABLE "change_review" (
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
  );

CREATE TRIGGER "change_review_no_update" BEFORE UPDATE OF "id", "site_id", "sequence", "entry_id", "note", "person_id", "reviewed_at" ON "change_review" BEGIN SELECT RAISE(ABORT, 'fact:change_review: rows are never changed'); END;

CREATE TRIGGER "change_review_no_delete" BEFORE DELETE ON "change_review" BEGIN SELECT RAISE(ABORT, 'fact:change_review: rows are never deleted'); END;

CREATE TRIGGER "change_review_no_replace" BEFORE INSERT ON "change_review" WHEN EXISTS (SELECT 1 FROM "change_review" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "change_review" WHERE "site_id" = NEW."site_id" AND "sequence" = NEW."sequence") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:change_review: the key is taken'); END;

CREATE TABLE "decision_second_person" (
    "id" varchar NOT NULL,
    "decision_id" varchar NOT NULL,
    "person_id" varchar NOT NULL,
    CONSTRAINT "pk_decision_second_person" PRIMARY KEY ("id"),
    CONSTRAINT "uq_decision_second_person_decision_id" UNIQUE ("decision_id"),
    CONSTRAINT "fk_decision_second_person_decision_id" FOREIGN KEY ("decision_id") REFERENCES "decision" ("id"),
    CONSTRAINT "fk_decision_second_person_person_id" FOREIGN KEY ("person_id") REFERENCES "person" ("id")
  );

CREATE TRIGGER "decision_second_person_no_update" BEFORE UPDATE OF "id", "decision_id", "person_id" ON "decision_second_person" BEGIN SELECT RAISE(ABORT, 'fact:decision_second_person: rows are never changed'); END;

CREATE TRIGGER "decision_second_person_no_delete" BEFORE DELETE ON "decision_second_person" BEGIN SELECT RAISE(ABORT, 'fact:decision_second_person: rows are never deleted'); END;

CREATE TRIGGER "decision_second_person_no_replace" BEFORE INSERT ON "decision_second_person" WHEN EXISTS (SELECT 1 FROM "decision_second_person" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "decision_second_person" WHERE "decision_id" = NEW."decision_id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:decision_second_person: the key is taken'); END;

CREATE TABLE "hold_narrowing" (
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
  );

CREATE INDEX "ix_hold_narrowing_hold_id" ON "hold_narrowing" ("hold_id");

CREATE TRIGGER "hold_narrowing_no_update" BEFORE UPDATE OF "id", "hold_id", "hazard", "reason", "assessment", "person_id", "narrowed_at" ON "hold_narrowing" BEGIN SELECT RAISE(ABORT, 'fact:hold_narrowing: rows are never changed'); END;

CREATE TRIGGER "hold_narrowing_no_delete" BEFORE DELETE ON "hold_narrowing" BEGIN SELECT RAISE(ABORT, 'fact:hold_narrowing: rows are never deleted'); END;

CREATE TRIGGER "hold_narrowing_no_replace" BEFORE INSERT ON "hold_narrowing" WHEN EXISTS (SELECT 1 FROM "hold_narrowing" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:hold_narrowing: the key is taken'); END;

CREATE TRIGGER "hold_narrowing_void_once" BEFORE UPDATE OF "voided_by" ON "hold_narrowing" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:hold_narrowing: voided_by is set once'); END;

CREATE TABLE "narrowed_part" (
    "id" varchar NOT NULL,
    "narrowing_id" varchar NOT NULL,
    "unit_kind" varchar NOT NULL,
    "unit_id" varchar NOT NULL,
    "from_at" varchar,
    "until_at" varchar,
    CONSTRAINT "pk_narrowed_part" PRIMARY KEY ("id"),
    CONSTRAINT "fk_narrowed_part_narrowing_id" FOREIGN KEY ("narrowing_id") REFERENCES "hold_narrowing" ("id")
  );

CREATE INDEX "ix_narrowed_part_narrowing_id" ON "narrowed_part" ("narrowing_id");

CREATE TRIGGER "narrowed_part_no_update" BEFORE UPDATE OF "id", "narrowing_id", "unit_kind", "unit_id", "from_at", "until_at" ON "narrowed_part" BEGIN SELECT RAISE(ABORT, 'fact:narrowed_part: rows are never changed'); END;

CREATE TRIGGER "narrowed_part_no_delete" BEFORE DELETE ON "narrowed_part" BEGIN SELECT RAISE(ABORT, 'fact:narrowed_part: rows are never deleted'); END;

CREATE TRIGGER "narrowed_part_no_replace" BEFORE INSERT ON "narrowed_part" WHEN EXISTS (SELECT 1 FROM "narrowed_part" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:narrowed_part: the key is taken'); END;

CREATE TABLE "narrowing_ground" (
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
  );

CREATE INDEX "ix_narrowing_ground_part_id" ON "narrowing_ground" ("part_id");

CREATE TRIGGER "narrowing_ground_no_update" BEFORE UPDATE OF "id", "part_id", "run_id", "from_count", "to_count", "bag_id", "period_id", "most_grams", "word" ON "narrowing_ground" BEGIN SELECT RAISE(ABORT, 'fact:narrowing_ground: rows are never changed'); END;

CREATE TRIGGER "narrowing_ground_no_delete" BEFORE DELETE ON "narrowing_ground" BEGIN SELECT RAISE(ABORT, 'fact:narrowing_ground: rows are never deleted'); END;

CREATE TRIGGER "narrowing_ground_no_replace" BEFORE INSERT ON "narrowing_ground" WHEN EXISTS (SELECT 1 FROM "narrowing_ground" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:narrowing_ground: the key is taken'); END;

CREATE TABLE "complaint" (
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
  );

CREATE TRIGGER "complaint_no_update" BEFORE UPDATE OF "id", "site_id", "number", "customer_id", "code_as_read", "bought_where", "bought_on", "pack_count", "words", "received_at" ON "complaint" BEGIN SELECT RAISE(ABORT, 'fact:complaint: rows are never changed'); END;

CREATE TRIGGER "complaint_no_delete" BEFORE DELETE ON "complaint" BEGIN SELECT RAISE(ABORT, 'fact:complaint: rows are never deleted'); END;

CREATE TRIGGER "complaint_no_replace" BEFORE INSERT ON "complaint" WHEN EXISTS (SELECT 1 FROM "complaint" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "complaint" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:complaint: the key is taken'); END;

CREATE TRIGGER "complaint_void_once" BEFORE UPDATE OF "voided_by" ON "complaint" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:complaint: voided_by is set once'); END;

CREATE TABLE "complaint_class" (
    "id" varchar NOT NULL,
    "complaint_id" varchar NOT NULL,
    "category" varchar NOT NULL,
    "severity" varchar NOT NULL,
    "reason" text,
    "set_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_complaint_class" PRIMARY KEY ("id"),
    CONSTRAINT "fk_complaint_class_complaint_id" FOREIGN KEY ("complaint_id") REFERENCES "complaint" ("id")
  );

CREATE INDEX "ix_complaint_class_complaint_id" ON "complaint_class" ("complaint_id");

CREATE TRIGGER "complaint_class_no_update" BEFORE UPDATE OF "id", "complaint_id", "category", "severity", "reason", "set_at" ON "complaint_class" BEGIN SELECT RAISE(ABORT, 'fact:complaint_class: rows are never changed'); END;

CREATE TRIGGER "complaint_class_no_delete" BEFORE DELETE ON "complaint_class" BEGIN SELECT RAISE(ABORT, 'fact:complaint_class: rows are never deleted'); END;

CREATE TRIGGER "complaint_class_no_replace" BEFORE INSERT ON "complaint_class" WHEN EXISTS (SELECT 1 FROM "complaint_class" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:complaint_class: the key is taken'); END;

CREATE TRIGGER "complaint_class_void_once" BEFORE UPDATE OF "voided_by" ON "complaint_class" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:complaint_class: voided_by is set once'); END;

CREATE TABLE "complaint_link" (
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
  );

CREATE INDEX "ix_complaint_link_subject_kind_subject_id" ON "complaint_link" ("subject_kind", "subject_id");

CREATE INDEX "ix_complaint_link_complaint_id" ON "complaint_link" ("complaint_id");

CREATE TRIGGER "complaint_link_no_update" BEFORE UPDATE OF "id", "complaint_id", "subject_kind", "subject_id", "local_time", "printed_at", "coded_from_at", "coded_until_at", "linked_at" ON "complaint_link" BEGIN SELECT RAISE(ABORT, 'fact:complaint_link: rows are never changed'); END;

CREATE TRIGGER "complaint_link_no_delete" BEFORE DELETE ON "complaint_link" BEGIN SELECT RAISE(ABORT, 'fact:complaint_link: rows are never deleted'); END;

CREATE TRIGGER "complaint_link_no_replace" BEFORE INSERT ON "complaint_link" WHEN EXISTS (SELECT 1 FROM "complaint_link" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:complaint_link: the key is taken'); END;

CREATE TRIGGER "complaint_link_void_once" BEFORE UPDATE OF "voided_by" ON "complaint_link" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:complaint_link: voided_by is set once'); END;

CREATE TABLE "complaint_step" (
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
  );

CREATE INDEX "ix_complaint_step_complaint_id" ON "complaint_step" ("complaint_id");

CREATE TRIGGER "complaint_step_no_update" BEFORE UPDATE OF "id", "complaint_id", "kind", "words", "way", "person_id", "done_at" ON "complaint_step" BEGIN SELECT RAISE(ABORT, 'fact:complaint_step: rows are never changed'); END;

CREATE TRIGGER "complaint_step_no_delete" BEFORE DELETE ON "complaint_step" BEGIN SELECT RAISE(ABORT, 'fact:complaint_step: rows are never deleted'); END;

CREATE TRIGGER "complaint_step_no_replace" BEFORE INSERT ON "complaint_step" WHEN EXISTS (SELECT 1 FROM "complaint_step" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:complaint_step: the key is taken'); END;

CREATE TRIGGER "complaint_step_void_once" BEFORE UPDATE OF "voided_by" ON "complaint_step" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:complaint_step: voided_by is set once'); END;

CREATE TABLE "complaint_state" (
    "complaint_id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "status" varchar NOT NULL,
    "change_count" integer NOT NULL,
    CONSTRAINT "pk_complaint_state" PRIMARY KEY ("complaint_id")
  );

CREATE INDEX "ix_complaint_state_site_id_status" ON "complaint_state" ("site_id", "status");

CREATE TABLE "complaint_contact" (
    "complaint_id" varchar NOT NULL,
    "name" varchar NOT NULL,
    "reach" varchar,
    CONSTRAINT "pk_complaint_contact" PRIMARY KEY ("complaint_id")
  );

CREATE TABLE "recall" (
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
  );

CREATE TRIGGER "recall_no_update" BEFORE UPDATE OF "id", "site_id", "number", "kind", "hazard", "reason", "sureness", "sureness_reason", "origin_kind", "origin_id", "opened_by", "started_at" ON "recall" BEGIN SELECT RAISE(ABORT, 'fact:recall: rows are never changed'); END;

CREATE TRIGGER "recall_no_delete" BEFORE DELETE ON "recall" BEGIN SELECT RAISE(ABORT, 'fact:recall: rows are never deleted'); END;

CREATE TRIGGER "recall_no_replace" BEFORE INSERT ON "recall" WHEN EXISTS (SELECT 1 FROM "recall" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "recall" WHERE "site_id" = NEW."site_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:recall: the key is taken'); END;

CREATE TRIGGER "recall_void_once" BEFORE UPDATE OF "voided_by" ON "recall" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:recall: voided_by is set once'); END;

CREATE TABLE "recall_scope" (
    "id" varchar NOT NULL,
    "recall_id" varchar NOT NULL,
    "scope_kind" varchar NOT NULL,
    "scope_id" varchar NOT NULL,
    "from_at" varchar,
    "until_at" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_recall_scope" PRIMARY KEY ("id"),
    CONSTRAINT "fk_recall_scope_recall_id" FOREIGN KEY ("recall_id") REFERENCES "recall" ("id")
  );

CREATE INDEX "ix_recall_scope_scope_kind_scope_id" ON "recall_scope" ("scope_kind", "scope_id");

CREATE INDEX "ix_recall_scope_recall_id" ON "recall_scope" ("recall_id");

CREATE TRIGGER "recall_scope_no_update" BEFORE UPDATE OF "id", "recall_id", "scope_kind", "scope_id", "from_at", "until_at" ON "recall_scope" BEGIN SELECT RAISE(ABORT, 'fact:recall_scope: rows are never changed'); END;

CREATE TRIGGER "recall_scope_no_delete" BEFORE DELETE ON "recall_scope" BEGIN SELECT RAISE(ABORT, 'fact:recall_scope: rows are never deleted'); END;

CREATE TRIGGER "recall_scope_no_replace" BEFORE INSERT ON "recall_scope" WHEN EXISTS (SELECT 1 FROM "recall_scope" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:recall_scope: the key is taken'); END;

CREATE TRIGGER "recall_scope_void_once" BEFORE UPDATE OF "voided_by" ON "recall_scope" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:recall_scope: voided_by is set once'); END;

CREATE TABLE "recall_mark" (
    "id" varchar NOT NULL,
    "recall_id" varchar NOT NULL,
    "mark" varchar NOT NULL,
    "marked_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_recall_mark" PRIMARY KEY ("id"),
    CONSTRAINT "fk_recall_mark_recall_id" FOREIGN KEY ("recall_id") REFERENCES "recall" ("id")
  );

CREATE UNIQUE INDEX "ix_recall_mark_recall_id_mark" ON "recall_mark" ("recall_id", "mark") WHERE "voided_by" IS NULL;

CREATE TRIGGER "recall_mark_no_update" BEFORE UPDATE OF "id", "recall_id", "mark", "marked_at" ON "recall_mark" BEGIN SELECT RAISE(ABORT, 'fact:recall_mark: rows are never changed'); END;

CREATE TRIGGER "recall_mark_no_delete" BEFORE DELETE ON "recall_mark" BEGIN SELECT RAISE(ABORT, 'fact:recall_mark: rows are never deleted'); END;

CREATE TRIGGER "recall_mark_no_replace" BEFORE INSERT ON "recall_mark" WHEN EXISTS (SELECT 1 FROM "recall_mark" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "recall_mark" WHERE "recall_id" = NEW."recall_id" AND "mark" = NEW."mark" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:recall_mark: the key is taken'); END;

CREATE TRIGGER "recall_mark_void_once" BEFORE UPDATE OF "voided_by" ON "recall_mark" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:recall_mark: voided_by is set once'); END;

CREATE TABLE "recall_answer" (
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
  );

CREATE INDEX "ix_recall_answer_recall_id" ON "recall_answer" ("recall_id");

CREATE TRIGGER "recall_answer_no_update" BEFORE UPDATE OF "id", "recall_id", "customer_id", "answer", "pack_count", "bag_grams", "remarks", "answered_at" ON "recall_answer" BEGIN SELECT RAISE(ABORT, 'fact:recall_answer: rows are never changed'); END;

CREATE TRIGGER "recall_answer_no_delete" BEFORE DELETE ON "recall_answer" BEGIN SELECT RAISE(ABORT, 'fact:recall_answer: rows are never deleted'); END;

CREATE TRIGGER "recall_answer_no_replace" BEFORE INSERT ON "recall_answer" WHEN EXISTS (SELECT 1 FROM "recall_answer" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:recall_answer: the key is taken'); END;

CREATE TRIGGER "recall_answer_void_once" BEFORE UPDATE OF "voided_by" ON "recall_answer" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:recall_answer: voided_by is set once'); END;

CREATE TABLE "recall_signing" (
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
  );

CREATE UNIQUE INDEX "ix_recall_signing_recall_id" ON "recall_signing" ("recall_id") WHERE "voided_by" IS NULL;

CREATE TRIGGER "recall_signing_no_update" BEFORE UPDATE OF "id", "recall_id", "figures", "explanation", "journal_head", "signed_by", "signed_at" ON "recall_signing" BEGIN SELECT RAISE(ABORT, 'fact:recall_signing: rows are never changed'); END;

CREATE TRIGGER "recall_signing_no_delete" BEFORE DELETE ON "recall_signing" BEGIN SELECT RAISE(ABORT, 'fact:recall_signing: rows are never deleted'); END;

CREATE TRIGGER "recall_signing_no_replace" BEFORE INSERT ON "recall_signing" WHEN EXISTS (SELECT 1 FROM "recall_signing" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "recall_signing" WHERE "recall_id" = NEW."recall_id" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:recall_signing: the key is taken'); END;

CREATE TRIGGER "recall_signing_void_once" BEFORE UPDATE OF "voided_by" ON "recall_signing" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:recall_signing: voided_by is set once'); END;

CREATE TRIGGER "hold_no_update_from_at" BEFORE UPDATE OF "from_at" ON "hold" BEGIN SELECT RAISE(ABORT, 'fact:hold: rows are never changed'); END;

CREATE TRIGGER "hold_no_update_until_at" BEFORE UPDATE OF "until_at" ON "hold" BEGIN SELECT RAISE(ABORT, 'fact:hold: rows are never changed'); END;

CREATE TABLE "paper_language" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "customer_id" varchar,
    "language" varchar,
    "set_at" varchar NOT NULL,
    CONSTRAINT "pk_paper_language" PRIMARY KEY ("id"),
    CONSTRAINT "fk_paper_language_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_paper_language_customer_id" FOREIGN KEY ("customer_id") REFERENCES "customer" ("id")
  );

CREATE INDEX "ix_paper_language_customer_id" ON "paper_language" ("customer_id");

CREATE INDEX "ix_paper_language_site_id" ON "paper_language" ("site_id");

CREATE TRIGGER "paper_language_no_update" BEFORE UPDATE OF "id", "site_id", "customer_id", "language", "set_at" ON "paper_language" BEGIN SELECT RAISE(ABORT, 'fact:paper_language: rows are never changed'); END;

CREATE TRIGGER "paper_language_no_delete" BEFORE DELETE ON "paper_language" BEGIN SELECT RAISE(ABORT, 'fact:paper_language: rows are never deleted'); END;

CREATE TRIGGER "paper_language_no_replace" BEFORE INSERT ON "paper_language" WHEN EXISTS (SELECT 1 FROM "paper_language" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:paper_language: the key is taken'); END;

CREATE TABLE "run_course" (
    "run_id" varchar NOT NULL,
    "course" text NOT NULL,
    CONSTRAINT "pk_run_course" PRIMARY KEY ("run_id")
  );

CREATE INDEX "ix_hopper_period_previous_period_id" ON "hopper_period" ("previous_period_id");

CREATE INDEX "ix_hopper_period_hopper_id_started_at" ON "hopper_period" ("hopper_id", "started_at");

CREATE INDEX "ix_bulk_bag_liner_lot_key" ON "bulk_bag" (UPPER("liner_lot"));

CREATE INDEX "ix_delivery_order_key" ON "delivery" (UPPER("order_number"));

CREATE INDEX "ix_delivery_plan_order_key" ON "delivery_plan" (UPPER("order_number"));

CREATE TABLE "tracer_trial" (
    "id" varchar NOT NULL,
    "hopper_id" varchar NOT NULL,
    "number" integer NOT NULL,
    "before_bag_id" varchar NOT NULL,
    "after_bag_id" varchar NOT NULL,
    "before_colour_iu" varchar NOT NULL,
    "after_colour_iu" varchar NOT NULL,
    "standard_iu" varchar NOT NULL,
    "pack_grams" integer,
    "inside_grams" bigint,
    "note" text,
    "made_at" varchar NOT NULL,
    "person_id" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_tracer_trial" PRIMARY KEY ("id"),
    CONSTRAINT "fk_tracer_trial_hopper_id" FOREIGN KEY ("hopper_id") REFERENCES "hopper" ("id"),
    CONSTRAINT "fk_tracer_trial_before_bag_id" FOREIGN KEY ("before_bag_id") REFERENCES "bulk_bag" ("id"),
    CONSTRAINT "fk_tracer_trial_after_bag_id" FOREIGN KEY ("after_bag_id") REFERENCES "bulk_bag" ("id")
  );

CREATE UNIQUE INDEX "ix_tracer_trial_hopper_id_number" ON "tracer_trial" ("hopper_id", "number");

CREATE TRIGGER "tracer_trial_no_update" BEFORE UPDATE OF "id", "hopper_id", "number", "before_bag_id", "after_bag_id", "before_colour_iu", "after_colour_iu", "standard_iu", "pack_grams", "inside_grams", "note", "made_at", "person_id" ON "tracer_trial" BEGIN SELECT RAISE(ABORT, 'fact:tracer_trial: rows are never changed'); END;

CREATE TRIGGER "tracer_trial_no_delete" BEFORE DELETE ON "tracer_trial" BEGIN SELECT RAISE(ABORT, 'fact:tracer_trial: rows are never deleted'); END;

CREATE TRIGGER "tracer_trial_no_replace" BEFORE INSERT ON "tracer_trial" WHEN EXISTS (SELECT 1 FROM "tracer_trial" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "tracer_trial" WHERE "hopper_id" = NEW."hopper_id" AND "number" = NEW."number") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:tracer_trial: the key is taken'); END;

CREATE TRIGGER "tracer_trial_void_once" BEFORE UPDATE OF "voided_by" ON "tracer_trial" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:tracer_trial: voided_by is set once'); END;

CREATE TABLE "tracer_sample" (
    "id" varchar NOT NULL,
    "trial_id" varchar NOT NULL,
    "from_grams" bigint NOT NULL,
    "to_grams" bigint NOT NULL,
    "colour_iu" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_tracer_sample" PRIMARY KEY ("id"),
    CONSTRAINT "fk_tracer_sample_trial_id" FOREIGN KEY ("trial_id") REFERENCES "tracer_trial" ("id")
  );

CREATE INDEX "ix_tracer_sample_trial_id" ON "tracer_sample" ("trial_id");

CREATE TRIGGER "tracer_sample_no_update" BEFORE UPDATE OF "id", "trial_id", "from_grams", "to_grams", "colour_iu" ON "tracer_sample" BEGIN SELECT RAISE(ABORT, 'fact:tracer_sample: rows are never changed'); END;

CREATE TRIGGER "tracer_sample_no_delete" BEFORE DELETE ON "tracer_sample" BEGIN SELECT RAISE(ABORT, 'fact:tracer_sample: rows are never deleted'); END;

CREATE TRIGGER "tracer_sample_no_replace" BEFORE INSERT ON "tracer_sample" WHEN EXISTS (SELECT 1 FROM "tracer_sample" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:tracer_sample: the key is taken'); END;

CREATE TRIGGER "tracer_sample_void_once" BEFORE UPDATE OF "voided_by" ON "tracer_sample" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:tracer_sample: voided_by is set once'); END;

CREATE TABLE "hopper_model" (
    "id" varchar NOT NULL,
    "hopper_id" varchar NOT NULL,
    "kind" varchar NOT NULL,
    "trial_id" varchar,
    "zone_count" integer,
    "zone_count_standard" varchar,
    "hold_up_grams" bigint,
    "hold_up_standard_grams" bigint,
    "reason" text,
    "valid_from" varchar NOT NULL,
    "person_id" varchar,
    "voided_by" varchar,
    CONSTRAINT "pk_hopper_model" PRIMARY KEY ("id"),
    CONSTRAINT "fk_hopper_model_hopper_id" FOREIGN KEY ("hopper_id") REFERENCES "hopper" ("id"),
    CONSTRAINT "fk_hopper_model_trial_id" FOREIGN KEY ("trial_id") REFERENCES "tracer_trial" ("id")
  );

CREATE UNIQUE INDEX "ix_hopper_model_hopper_id_valid_from" ON "hopper_model" ("hopper_id", "valid_from") WHERE "voided_by" IS NULL;

CREATE TRIGGER "hopper_model_no_update" BEFORE UPDATE OF "id", "hopper_id", "kind", "trial_id", "zone_count", "zone_count_standard", "hold_up_grams", "hold_up_standard_grams", "reason", "valid_from", "person_id" ON "hopper_model" BEGIN SELECT RAISE(ABORT, 'fact:hopper_model: rows are never changed'); END;

CREATE TRIGGER "hopper_model_no_delete" BEFORE DELETE ON "hopper_model" BEGIN SELECT RAISE(ABORT, 'fact:hopper_model: rows are never deleted'); END;

CREATE TRIGGER "hopper_model_no_replace" BEFORE INSERT ON "hopper_model" WHEN EXISTS (SELECT 1 FROM "hopper_model" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "hopper_model" WHERE "hopper_id" = NEW."hopper_id" AND "valid_from" = NEW."valid_from" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:hopper_model: the key is taken'); END;

CREATE TRIGGER "hopper_model_void_once" BEFORE UPDATE OF "voided_by" ON "hopper_model" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:hopper_model: voided_by is set once'); END;

CREATE TABLE "pack_weigher" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "device_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "code" varchar NOT NULL,
    "step_milligrams" integer NOT NULL,
    "maximum_permissible_error_milligrams" integer NOT NULL,
    "head_count" integer,
    "counts_packs" boolean NOT NULL,
    "rejects_packs" boolean NOT NULL,
    "set_up_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_pack_weigher" PRIMARY KEY ("id"),
    CONSTRAINT "fk_pack_weigher_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_pack_weigher_device_id" FOREIGN KEY ("device_id") REFERENCES "device" ("id"),
    CONSTRAINT "fk_pack_weigher_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id")
  );

CREATE UNIQUE INDEX "ix_pack_weigher_device_id" ON "pack_weigher" ("device_id") WHERE "voided_by" IS NULL;

CREATE UNIQUE INDEX "ix_pack_weigher_site_id_code" ON "pack_weigher" ("site_id", "code") WHERE "voided_by" IS NULL;

CREATE TRIGGER "pack_weigher_no_update" BEFORE UPDATE OF "id", "site_id", "device_id", "line_id", "code", "step_milligrams", "maximum_permissible_error_milligrams", "head_count", "counts_packs", "rejects_packs", "set_up_at" ON "pack_weigher" BEGIN SELECT RAISE(ABORT, 'fact:pack_weigher: rows are never changed'); END;

CREATE TRIGGER "pack_weigher_no_delete" BEFORE DELETE ON "pack_weigher" BEGIN SELECT RAISE(ABORT, 'fact:pack_weigher: rows are never deleted'); END;

CREATE TRIGGER "pack_weigher_no_replace" BEFORE INSERT ON "pack_weigher" WHEN EXISTS (SELECT 1 FROM "pack_weigher" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "pack_weigher" WHERE "device_id" = NEW."device_id" AND "voided_by" IS NULL) OR EXISTS (SELECT 1 FROM "pack_weigher" WHERE "site_id" = NEW."site_id" AND "code" = NEW."code" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:pack_weigher: the key is taken'); END;

CREATE TRIGGER "pack_weigher_void_once" BEFORE UPDATE OF "voided_by" ON "pack_weigher" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:pack_weigher: voided_by is set once'); END;

CREATE TABLE "weight_batch" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "first_sequence" bigint NOT NULL,
    "last_sequence" bigint NOT NULL,
    "weight_count" integer NOT NULL,
    "first_at" varchar NOT NULL,
    "last_at" varchar NOT NULL,
    "weights" blob NOT NULL,
    "digest" varchar NOT NULL,
    "entry_id" varchar NOT NULL,
    "received_at" varchar NOT NULL,
    CONSTRAINT "pk_weight_batch" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weight_batch_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id"),
    CONSTRAINT "fk_weight_batch_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id")
  );

CREATE INDEX "ix_weight_batch_run_id" ON "weight_batch" ("run_id");

CREATE INDEX "ix_weight_batch_weigher_id_series_first_sequence" ON "weight_batch" ("weigher_id", "series", "first_sequence");

CREATE TABLE "weight_series" (
    "device_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "weight_count" bigint NOT NULL,
    "last_received_at" varchar NOT NULL,
    CONSTRAINT "pk_weight_series" PRIMARY KEY ("device_id", "series")
  );

CREATE TABLE "weight_range" (
    "device_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "from_sequence" bigint NOT NULL,
    "to_sequence" bigint NOT NULL,
    CONSTRAINT "pk_weight_range" PRIMARY KEY ("device_id", "series", "from_sequence")
  );

CREATE TABLE "weight_block" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "first_sequence" bigint NOT NULL,
    "last_sequence" bigint NOT NULL,
    "weight_count" integer NOT NULL,
    "first_at" varchar NOT NULL,
    "last_at" varchar NOT NULL,
    "sealed_at" varchar NOT NULL,
    "accepted_pack_count" bigint NOT NULL,
    "accepted_error_sum_milligrams" bigint NOT NULL,
    "accepted_squares_high" bigint NOT NULL,
    "accepted_squares_low" bigint NOT NULL,
    "accepted_smallest_milligrams" integer,
    "accepted_largest_milligrams" integer,
    "accepted_beyond_t1_count" bigint NOT NULL,
    "accepted_beyond_t2_count" bigint NOT NULL,
    "rejected_pack_count" bigint NOT NULL,
    "rejected_error_sum_milligrams" bigint NOT NULL,
    "rejected_squares_high" bigint NOT NULL,
    "rejected_squares_low" bigint NOT NULL,
    "rejected_smallest_milligrams" integer,
    "rejected_largest_milligrams" integer,
    "rejected_beyond_t1_count" bigint NOT NULL,
    "rejected_beyond_t2_count" bigint NOT NULL,
    "weights" blob,
    CONSTRAINT "pk_weight_block" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weight_block_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id"),
    CONSTRAINT "fk_weight_block_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id")
  );

CREATE INDEX "ix_weight_block_run_id_weigher_id_first_at" ON "weight_block" ("run_id", "weigher_id", "first_at");

CREATE INDEX "ix_weight_block_weigher_id_series_first_sequence" ON "weight_block" ("weigher_id", "series", "first_sequence");

CREATE INDEX "ix_weight_block_last_at" ON "weight_block" ("last_at") WHERE "weights" IS NOT NULL;

CREATE TABLE "weight_run" (
    "run_id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "nominal_milligrams" integer NOT NULL,
    "t1_milligrams" integer,
    "t2_milligrams" integer,
    "bin_milligrams" integer NOT NULL,
    "first_at" varchar NOT NULL,
    "last_at" varchar NOT NULL,
    "accepted_pack_count" bigint NOT NULL,
    "accepted_error_sum_milligrams" bigint NOT NULL,
    "accepted_squares_high" bigint NOT NULL,
    "accepted_squares_low" bigint NOT NULL,
    "accepted_smallest_milligrams" integer,
    "accepted_largest_milligrams" integer,
    "accepted_beyond_t1_count" bigint NOT NULL,
    "accepted_beyond_t2_count" bigint NOT NULL,
    "rejected_pack_count" bigint NOT NULL,
    "rejected_error_sum_milligrams" bigint NOT NULL,
    "rejected_squares_high" bigint NOT NULL,
    "rejected_squares_low" bigint NOT NULL,
    "rejected_smallest_milligrams" integer,
    "rejected_largest_milligrams" integer,
    "rejected_beyond_t1_count" bigint NOT NULL,
    "rejected_beyond_t2_count" bigint NOT NULL,
    "accepted_histogram" blob NOT NULL,
    "rejected_histogram" blob NOT NULL,
    CONSTRAINT "pk_weight_run" PRIMARY KEY ("run_id", "weigher_id")
  );

CREATE INDEX "ix_weight_run_weigher_id_first_at_last_at" ON "weight_run" ("weigher_id", "first_at", "last_at");

CREATE TABLE "weight_hour" (
    "run_id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "hour_at" varchar NOT NULL,
    "accepted_pack_count" bigint NOT NULL,
    "accepted_error_sum_milligrams" bigint NOT NULL,
    "accepted_squares_high" bigint NOT NULL,
    "accepted_squares_low" bigint NOT NULL,
    "accepted_smallest_milligrams" integer,
    "accepted_largest_milligrams" integer,
    "accepted_beyond_t1_count" bigint NOT NULL,
    "accepted_beyond_t2_count" bigint NOT NULL,
    "rejected_pack_count" bigint NOT NULL,
    "rejected_error_sum_milligrams" bigint NOT NULL,
    "rejected_squares_high" bigint NOT NULL,
    "rejected_squares_low" bigint NOT NULL,
    "rejected_smallest_milligrams" integer,
    "rejected_largest_milligrams" integer,
    "rejected_beyond_t1_count" bigint NOT NULL,
    "rejected_beyond_t2_count" bigint NOT NULL,
    "accepted_histogram" blob NOT NULL,
    "rejected_histogram" blob NOT NULL, "accepted_minutes" blob,
    CONSTRAINT "pk_weight_hour" PRIMARY KEY ("run_id", "weigher_id", "hour_at")
  );

CREATE INDEX "ix_weight_hour_weigher_id_hour_at" ON "weight_hour" ("weigher_id", "hour_at");

CREATE TABLE "short_pack" (
    "weigher_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "sequence" bigint NOT NULL,
    "run_id" varchar NOT NULL,
    "weighed_at" varchar NOT NULL,
    "net_milligrams" integer NOT NULL,
    "head" integer,
    CONSTRAINT "pk_short_pack" PRIMARY KEY ("weigher_id", "series", "sequence")
  );

CREATE INDEX "ix_short_pack_run_id" ON "short_pack" ("run_id");

CREATE TABLE "tare_correction" (
    "id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "from_sequence" bigint NOT NULL,
    "to_sequence" bigint NOT NULL,
    "added_milligrams" integer NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_tare_correction" PRIMARY KEY ("id"),
    CONSTRAINT "fk_tare_correction_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id"),
    CONSTRAINT "fk_tare_correction_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id")
  );

CREATE INDEX "ix_tare_correction_run_id" ON "tare_correction" ("run_id");

CREATE TRIGGER "tare_correction_no_update" BEFORE UPDATE OF "id", "run_id", "weigher_id", "series", "from_sequence", "to_sequence", "added_milligrams" ON "tare_correction" BEGIN SELECT RAISE(ABORT, 'fact:tare_correction: rows are never changed'); END;

CREATE TRIGGER "tare_correction_no_delete" BEFORE DELETE ON "tare_correction" BEGIN SELECT RAISE(ABORT, 'fact:tare_correction: rows are never deleted'); END;

CREATE TRIGGER "tare_correction_no_replace" BEFORE INSERT ON "tare_correction" WHEN EXISTS (SELECT 1 FROM "tare_correction" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:tare_correction: the key is taken'); END;

CREATE TRIGGER "tare_correction_void_once" BEFORE UPDATE OF "voided_by" ON "tare_correction" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:tare_correction: voided_by is set once'); END;

CREATE TABLE "weigher_way" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "takes_mqtt" boolean NOT NULL,
    "set_at" varchar NOT NULL,
    CONSTRAINT "pk_weigher_way" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weigher_way_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id")
  );

CREATE INDEX "ix_weigher_way_weigher_id" ON "weigher_way" ("weigher_id");

CREATE TRIGGER "weigher_way_no_update" BEFORE UPDATE OF "id", "weigher_id", "takes_mqtt", "set_at" ON "weigher_way" BEGIN SELECT RAISE(ABORT, 'fact:weigher_way: rows are never changed'); END;

CREATE TRIGGER "weigher_way_no_delete" BEFORE DELETE ON "weigher_way" BEGIN SELECT RAISE(ABORT, 'fact:weigher_way: rows are never deleted'); END;

CREATE TRIGGER "weigher_way_no_replace" BEFORE INSERT ON "weigher_way" WHEN EXISTS (SELECT 1 FROM "weigher_way" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:weigher_way: the key is taken'); END;

CREATE TABLE "file_layout" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "layout" text NOT NULL,
    "set_at" varchar NOT NULL,
    CONSTRAINT "pk_file_layout" PRIMARY KEY ("id"),
    CONSTRAINT "fk_file_layout_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id")
  );

CREATE INDEX "ix_file_layout_weigher_id" ON "file_layout" ("weigher_id");

CREATE TRIGGER "file_layout_no_update" BEFORE UPDATE OF "id", "weigher_id", "layout", "set_at" ON "file_layout" BEGIN SELECT RAISE(ABORT, 'fact:file_layout: rows are never changed'); END;

CREATE TRIGGER "file_layout_no_delete" BEFORE DELETE ON "file_layout" BEGIN SELECT RAISE(ABORT, 'fact:file_layout: rows are never deleted'); END;

CREATE TRIGGER "file_layout_no_replace" BEFORE INSERT ON "file_layout" WHEN EXISTS (SELECT 1 FROM "file_layout" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:file_layout: the key is taken'); END;

CREATE TABLE "weight_file" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "layout_id" varchar NOT NULL,
    "name" varchar NOT NULL,
    "digest" varchar NOT NULL,
    "byte_count" integer NOT NULL,
    "packed" blob NOT NULL,
    "brought_at" varchar NOT NULL,
    CONSTRAINT "pk_weight_file" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weight_file_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id"),
    CONSTRAINT "fk_weight_file_layout_id" FOREIGN KEY ("layout_id") REFERENCES "file_layout" ("id")
  );

CREATE INDEX "ix_weight_file_brought_at" ON "weight_file" ("brought_at");

CREATE TABLE "hand_sample_plan" (
    "id" varchar NOT NULL,
    "site_id" varchar NOT NULL,
    "line_id" varchar NOT NULL,
    "format_id" varchar,
    "every_minutes" integer NOT NULL,
    "pack_count" integer NOT NULL,
    "grace_minutes" integer NOT NULL,
    "is_in_force" boolean NOT NULL,
    "set_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_hand_sample_plan" PRIMARY KEY ("id"),
    CONSTRAINT "fk_hand_sample_plan_site_id" FOREIGN KEY ("site_id") REFERENCES "site" ("id"),
    CONSTRAINT "fk_hand_sample_plan_line_id" FOREIGN KEY ("line_id") REFERENCES "packing_line" ("id"),
    CONSTRAINT "fk_hand_sample_plan_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id")
  );

CREATE INDEX "ix_hand_sample_plan_line_id" ON "hand_sample_plan" ("line_id");

CREATE TRIGGER "hand_sample_plan_no_update" BEFORE UPDATE OF "id", "site_id", "line_id", "format_id", "every_minutes", "pack_count", "grace_minutes", "is_in_force", "set_at" ON "hand_sample_plan" BEGIN SELECT RAISE(ABORT, 'fact:hand_sample_plan: rows are never changed'); END;

CREATE TRIGGER "hand_sample_plan_no_delete" BEFORE DELETE ON "hand_sample_plan" BEGIN SELECT RAISE(ABORT, 'fact:hand_sample_plan: rows are never deleted'); END;

CREATE TRIGGER "hand_sample_plan_no_replace" BEFORE INSERT ON "hand_sample_plan" WHEN EXISTS (SELECT 1 FROM "hand_sample_plan" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:hand_sample_plan: the key is taken'); END;

CREATE TRIGGER "hand_sample_plan_void_once" BEFORE UPDATE OF "voided_by" ON "hand_sample_plan" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:hand_sample_plan: voided_by is set once'); END;

CREATE TABLE "silence_setting" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "silent_after_minutes" integer,
    "set_at" varchar NOT NULL,
    "voided_by" varchar,
    CONSTRAINT "pk_silence_setting" PRIMARY KEY ("id"),
    CONSTRAINT "fk_silence_setting_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id")
  );

CREATE INDEX "ix_silence_setting_weigher_id" ON "silence_setting" ("weigher_id");

CREATE TRIGGER "silence_setting_no_update" BEFORE UPDATE OF "id", "weigher_id", "silent_after_minutes", "set_at" ON "silence_setting" BEGIN SELECT RAISE(ABORT, 'fact:silence_setting: rows are never changed'); END;

CREATE TRIGGER "silence_setting_no_delete" BEFORE DELETE ON "silence_setting" BEGIN SELECT RAISE(ABORT, 'fact:silence_setting: rows are never deleted'); END;

CREATE TRIGGER "silence_setting_no_replace" BEFORE INSERT ON "silence_setting" WHEN EXISTS (SELECT 1 FROM "silence_setting" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:silence_setting: the key is taken'); END;

CREATE TRIGGER "silence_setting_void_once" BEFORE UPDATE OF "voided_by" ON "silence_setting" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:silence_setting: voided_by is set once'); END;

CREATE TABLE "weigher_silence" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "run_id" varchar NOT NULL,
    "since_at" varchar NOT NULL,
    "until_at" varchar,
    "found_at" varchar NOT NULL,
    CONSTRAINT "pk_weigher_silence" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weigher_silence_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id"),
    CONSTRAINT "fk_weigher_silence_run_id" FOREIGN KEY ("run_id") REFERENCES "packing_run" ("id")
  );

CREATE INDEX "ix_weigher_silence_run_id" ON "weigher_silence" ("run_id");

CREATE UNIQUE INDEX "ix_weigher_silence_weigher_id_run_id" ON "weigher_silence" ("weigher_id", "run_id") WHERE "until_at" IS NULL;

CREATE TABLE "weight_month" (
    "weigher_id" varchar NOT NULL,
    "month_at" varchar NOT NULL,
    "measured_by" varchar NOT NULL,
    "nominal_milligrams" integer NOT NULL,
    "t1_milligrams" integer,
    "t2_milligrams" integer,
    "bin_milligrams" integer NOT NULL,
    "accepted_pack_count" bigint NOT NULL,
    "accepted_error_sum_milligrams" bigint NOT NULL,
    "accepted_squares_high" bigint NOT NULL,
    "accepted_squares_low" bigint NOT NULL,
    "accepted_smallest_milligrams" integer,
    "accepted_largest_milligrams" integer,
    "accepted_beyond_t1_count" bigint NOT NULL,
    "accepted_beyond_t2_count" bigint NOT NULL,
    "rejected_pack_count" bigint NOT NULL,
    "rejected_error_sum_milligrams" bigint NOT NULL,
    "rejected_squares_high" bigint NOT NULL,
    "rejected_squares_low" bigint NOT NULL,
    "rejected_smallest_milligrams" integer,
    "rejected_largest_milligrams" integer,
    "rejected_beyond_t1_count" bigint NOT NULL,
    "rejected_beyond_t2_count" bigint NOT NULL,
    "accepted_histogram" blob NOT NULL,
    "rejected_histogram" blob NOT NULL,
    CONSTRAINT "pk_weight_month" PRIMARY KEY ("weigher_id", "month_at", "measured_by")
  );

CREATE TABLE "weigher_check" (
    "id" varchar NOT NULL,
    "weigher_id" varchar NOT NULL,
    "device_id" varchar NOT NULL,
    "series" varchar NOT NULL,
    "sequence" bigint NOT NULL,
    "check_id" varchar NOT NULL,
    "readings" text NOT NULL,
    "digest" varchar NOT NULL,
    "received_at" varchar NOT NULL,
    CONSTRAINT "pk_weigher_check" PRIMARY KEY ("id"),
    CONSTRAINT "fk_weigher_check_weigher_id" FOREIGN KEY ("weigher_id") REFERENCES "pack_weigher" ("id"),
    CONSTRAINT "fk_weigher_check_device_id" FOREIGN KEY ("device_id") REFERENCES "device" ("id"),
    CONSTRAINT "fk_weigher_check_check_id" FOREIGN KEY ("check_id") REFERENCES "line_check" ("id")
  );

CREATE UNIQUE INDEX "ix_weigher_check_device_id_series_sequence" ON "weigher_check" ("device_id", "series", "sequence");

CREATE INDEX "ix_weigher_check_check_id" ON "weigher_check" ("check_id");

CREATE TRIGGER "weigher_check_no_update" BEFORE UPDATE OF "id", "weigher_id", "device_id", "series", "sequence", "check_id", "readings", "digest", "received_at" ON "weigher_check" BEGIN SELECT RAISE(ABORT, 'fact:weigher_check: rows are never changed'); END;

CREATE TRIGGER "weigher_check_no_delete" BEFORE DELETE ON "weigher_check" BEGIN SELECT RAISE(ABORT, 'fact:weigher_check: rows are never deleted'); END;

CREATE TRIGGER "weigher_check_no_replace" BEFORE INSERT ON "weigher_check" WHEN EXISTS (SELECT 1 FROM "weigher_check" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "weigher_check" WHERE "device_id" = NEW."device_id" AND "series" = NEW."series" AND "sequence" = NEW."sequence") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:weigher_check: the key is taken'); END;

CREATE TABLE "line_setting" (
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
  );

CREATE INDEX "ix_line_setting_line_id_changed_at" ON "line_setting" ("line_id", "changed_at");

CREATE TRIGGER "line_setting_no_update" BEFORE UPDATE OF "id", "line_id", "format_id", "setpoint_milligrams", "reject_below_milligrams", "reject_above_milligrams", "changed_at", "why", "set_by" ON "line_setting" BEGIN SELECT RAISE(ABORT, 'fact:line_setting: rows are never changed'); END;

CREATE TRIGGER "line_setting_no_delete" BEFORE DELETE ON "line_setting" BEGIN SELECT RAISE(ABORT, 'fact:line_setting: rows are never deleted'); END;

CREATE TRIGGER "line_setting_no_replace" BEFORE INSERT ON "line_setting" WHEN EXISTS (SELECT 1 FROM "line_setting" WHERE "id" = NEW."id") BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:line_setting: the key is taken'); END;

CREATE TRIGGER "line_setting_void_once" BEFORE UPDATE OF "voided_by" ON "line_setting" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:line_setting: voided_by is set once'); END;

CREATE TABLE "format_sale" (
    "id" varchar NOT NULL,
    "format_id" varchar NOT NULL,
    "markets" text NOT NULL,
    "price_per_kilogram" varchar,
    "valid_from" varchar NOT NULL,
    "voided_by" varchar, "currency" varchar,
    CONSTRAINT "pk_format_sale" PRIMARY KEY ("id"),
    CONSTRAINT "fk_format_sale_format_id" FOREIGN KEY ("format_id") REFERENCES "pack_format" ("id")
  );

CREATE UNIQUE INDEX "ix_format_sale_format_id_valid_from" ON "format_sale" ("format_id", "valid_from") WHERE "voided_by" IS NULL;

CREATE TRIGGER "format_sale_no_update" BEFORE UPDATE OF "id", "format_id", "markets", "price_per_kilogram", "valid_from" ON "format_sale" BEGIN SELECT RAISE(ABORT, 'fact:format_sale: rows are never changed'); END;

CREATE TRIGGER "format_sale_no_delete" BEFORE DELETE ON "format_sale" BEGIN SELECT RAISE(ABORT, 'fact:format_sale: rows are never deleted'); END;

CREATE TRIGGER "format_sale_no_replace" BEFORE INSERT ON "format_sale" WHEN EXISTS (SELECT 1 FROM "format_sale" WHERE "id" = NEW."id") OR EXISTS (SELECT 1 FROM "format_sale" WHERE "format_id" = NEW."format_id" AND "valid_from" = NEW."valid_from" AND "voided_by" IS NULL) BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:format_sale: the key is taken'); END;

CREATE TRIGGER "format_sale_void_once" BEFORE UPDATE OF "voided_by" ON "format_sale" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL BEGIN SELECT RAISE(ABORT, 'fact:format_sale: voided_by is set once'); END;

CREATE TRIGGER "format_sale_no_update_currency" BEFORE UPDATE OF "currency" ON "format_sale" BEGIN SELECT RAISE(ABORT, 'fact:format_sale: rows are never changed'); END;

CREATE INDEX "ix_result_id" ON "result" ("id") WHERE "retest_number" > 0 AND "voided_by" IS NULL;
