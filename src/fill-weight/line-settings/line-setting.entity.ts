import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../../platform/database/columns.js';
import { Fact } from '../../platform/database/fact-table.js';
import { PackFormat } from '../../plant/pack-format.entity.js';
import { PackingLine } from '../../plant/packing-line.entity.js';

/** Somebody set the filler or the weigher of a line otherwise, for a format. A figure that was left alone is null. */
@Fact()
@Entity('line_setting')
@Index(['lineId', 'changedAt'])
export class LineSetting {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackingLine)
  lineId!: string;

  @RefColumn(() => PackFormat)
  formatId!: string;

  /** What the filler is set to. */
  @WholeColumn({ nullable: true })
  setpointMilligrams!: number | null;

  /** The weigher pushes out what weighs less. */
  @WholeColumn({ nullable: true })
  rejectBelowMilligrams!: number | null;

  /** The weigher pushes out what weighs more. */
  @WholeColumn({ nullable: true })
  rejectAboveMilligrams!: number | null;

  @InstantColumn()
  changedAt!: string;

  @TextColumn()
  why!: string;

  /** Null: a machine. */
  @WordColumn({ nullable: true })
  setBy!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
