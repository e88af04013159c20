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
import { OpenPoint } from './open-point.entity.js';

/** A point is dealt with: its cause is gone (cleared), or somebody says why it stays (explained). */
@Fact()
@Entity('open_point_end')
@Index(['pointId'], { unique: true, where: '"voided_by" IS NULL' })
export class OpenPointEnd {
  @IdColumn()
  id!: string;

  @RefColumn(() => OpenPoint)
  pointId!: string;

  @WordColumn()
  how!: 'cleared' | 'explained';

  @TextColumn({ nullable: true })
  explanation!: string | null;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @InstantColumn()
  endedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
