import { Entity, Index } from 'typeorm';
import {
  FlagColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Handover } from './handover.entity.js';

/** The incoming lead takes a line over: beside the outgoing one, or alone when opening it. Not agreeing blocks nothing. */
@Fact()
@Entity('handover_answer')
@Index(['handoverId'], { unique: true, where: '"voided_by" IS NULL' })
export class HandoverAnswer {
  @IdColumn()
  id!: string;

  @RefColumn(() => Handover)
  handoverId!: string;

  @WordColumn()
  personId!: string;

  @WordColumn()
  how!: 'together' | 'at-opening';

  @FlagColumn()
  agrees!: boolean;

  /** What the incoming lead does not agree with. */
  @TextColumn({ nullable: true })
  disagreement!: string | null;

  @InstantColumn()
  answeredAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
