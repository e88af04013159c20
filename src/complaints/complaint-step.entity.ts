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
import type { AnswerWay, StepKind } from './complaint-words.js';

/** Something that was found or done about a complaint. */
@Fact()
@Entity('complaint_step')
@Index(['complaintId'])
export class ComplaintStep {
  @IdColumn()
  id!: string;

  @RefColumn(() => Complaint)
  complaintId!: string;

  @WordColumn()
  kind!: StepKind;

  /** Null only where somebody begins to look into it. */
  @TextColumn({ nullable: true })
  words!: string | null;

  /** Of an answer: how it was given. */
  @WordColumn({ nullable: true })
  way!: AnswerWay | null;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @InstantColumn()
  doneAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
