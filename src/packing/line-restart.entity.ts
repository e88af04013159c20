import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { LineStop } from './line-stop.entity.js';

/** A line that had stopped runs again. */
@Fact()
@Entity('line_restart')
@Index(['stopId'], { unique: true, where: '"voided_by" IS NULL' })
export class LineRestart {
  @IdColumn()
  id!: string;

  @RefColumn(() => LineStop)
  stopId!: string;

  @InstantColumn()
  startedAgainAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
