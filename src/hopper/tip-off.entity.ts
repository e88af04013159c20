import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { BagWeighing } from '../drying/bag-weighing.entity.js';
import { Tip } from './tip.entity.js';

/** The bag is off: empty, or weighed back with this rest. */
@Fact()
@Entity('tip_off')
@Index(['tipId'], { unique: true, where: '"voided_by" IS NULL' })
export class TipOff {
  @IdColumn()
  id!: string;

  @RefColumn(() => Tip)
  tipId!: string;

  @InstantColumn()
  offAt!: string;

  @WholeColumn()
  restGrams!: number;

  @RefColumn(() => BagWeighing, { nullable: true })
  weighingId!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
