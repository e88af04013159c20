import { Entity, Index } from 'typeorm';
import {
  FlagColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Scale } from './scale.entity.js';

/** A check of a scale with known weights. */
@Fact()
@Entity('scale_check')
@Index(['scaleId', 'checkedAt'], { unique: true, where: '"voided_by" IS NULL' })
export class ScaleCheck {
  @IdColumn()
  id!: string;

  @RefColumn(() => Scale)
  scaleId!: string;

  @InstantColumn()
  checkedAt!: string;

  @WholeColumn()
  deviationMilligrams!: number;

  @FlagColumn()
  passed!: boolean;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
