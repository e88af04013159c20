import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Complaint } from './complaint.entity.js';
import type { ComplaintCategory, ComplaintSeverity } from './complaint-words.js';

/** What a complaint is taken to be about and how grave it is; the latest good row stands. */
@Fact()
@Entity('complaint_class')
@Index(['complaintId'])
export class ComplaintClass {
  @IdColumn()
  id!: string;

  @RefColumn(() => Complaint)
  complaintId!: string;

  @WordColumn()
  category!: ComplaintCategory;

  @WordColumn()
  severity!: ComplaintSeverity;

  /** Null with the first one: it came with the complaint. */
  @TextColumn({ nullable: true })
  reason!: string | null;

  @InstantColumn()
  setAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
