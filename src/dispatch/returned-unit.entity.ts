import { Entity, Index } from 'typeorm';
import { IdColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Lot } from '../packing/lot.entity.js';
import { DeliveryReturn } from './delivery-return.entity.js';
import { Loading } from './loading.entity.js';

/** A whole pallet or bag as it had been loaded, or loose packs of a lot. */
@Fact()
@Entity('returned_unit')
@Index(['returnId'])
@Index(['loadingId'], { unique: true, where: '"voided_by" IS NULL' })
@Index(['lotId'])
export class ReturnedUnit {
  @IdColumn()
  id!: string;

  @RefColumn(() => DeliveryReturn)
  returnId!: string;

  /** Of a pallet or a whole bag; null for loose packs. */
  @RefColumn(() => Loading, { nullable: true })
  loadingId!: string | null;

  /** Of loose packs. */
  @RefColumn(() => Lot, { nullable: true })
  lotId!: string | null;

  /** Packs that came back; a whole bag counts as 1. */
  @WholeColumn()
  unitCount!: number;

  /** Of these, how many the customer need not pay. */
  @WholeColumn()
  creditedCount!: number;

  @VoidedByColumn()
  voidedBy!: string | null;
}
