import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Changeover } from './changeover.entity.js';

/** One rung of a changeover is done, with what proves it. */
@Fact()
@Entity('changeover_rung')
@Index(['changeoverId', 'rung'], { unique: true, where: '"voided_by" IS NULL' })
export class ChangeoverRung {
  @IdColumn()
  id!: string;

  @RefColumn(() => Changeover)
  changeoverId!: string;

  @WordColumn()
  rung!: string;

  /** The record that proves it: a run's close, a proven empty, a bin, a change of the code. */
  @WordColumn({ nullable: true })
  recordId!: string | null;

  /** What was counted: packs, rolls. */
  @WholeColumn({ nullable: true })
  count!: number | null;

  /** Who else looked. */
  @WordColumn({ nullable: true })
  secondPersonId!: string | null;

  @TextColumn({ nullable: true })
  note!: string | null;

  @InstantColumn()
  doneAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
