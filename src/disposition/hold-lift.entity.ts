import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, TextColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Hold } from './hold.entity.js';

/** Quality lifts a hold. */
@Fact()
@Entity('hold_lift')
@Index(['holdId'], { unique: true, where: '"voided_by" IS NULL' })
export class HoldLift {
  @IdColumn()
  id!: string;

  @RefColumn(() => Hold)
  holdId!: string;

  @TextColumn()
  reason!: string;

  @InstantColumn()
  liftedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
