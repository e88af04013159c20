import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import type { ThreadKind } from '../tracing/thread.js';
import { Complaint } from './complaint.entity.js';

/** What a complaint is about: a thing with a thread, and which packs of it. The latest good row stands. */
@Fact()
@Entity('complaint_link')
@Index(['complaintId'])
@Index(['subjectKind', 'subjectId'])
export class ComplaintLink {
  @IdColumn()
  id!: string;

  @RefColumn(() => Complaint)
  complaintId!: string;

  @WordColumn()
  subjectKind!: ThreadKind;

  @WordColumn()
  subjectId!: string;

  /** As on the pack, `HH:mm`. */
  @WordColumn({ nullable: true })
  localTime!: string | null;

  /** Which coming of that time by the plant's clock, where it came more than once. */
  @InstantColumn({ nullable: true })
  printedAt!: string | null;

  /** Which use of a code that came back years later. */
  @InstantColumn({ nullable: true })
  codedFromAt!: string | null;

  @InstantColumn({ nullable: true })
  codedUntilAt!: string | null;

  @InstantColumn()
  linkedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
