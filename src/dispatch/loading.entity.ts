import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { BulkBag } from '../drying/bulk-bag.entity.js';
import { Delivery } from './delivery.entity.js';
import { Pallet } from '../pallets/pallet.entity.js';

/** A pallet or a whole bag went onto the vehicle. */
@Fact()
@Entity('loading')
@Index(['deliveryId'])
@Index(['palletId'])
@Index(['bagId'])
export class Loading {
  @IdColumn()
  id!: string;

  @RefColumn(() => Delivery)
  deliveryId!: string;

  @RefColumn(() => Pallet, { nullable: true })
  palletId!: string | null;

  @RefColumn(() => BulkBag, { nullable: true })
  bagId!: string | null;

  /** In the order of loading, from 1. */
  @WholeColumn()
  place!: number;

  @InstantColumn()
  loadedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
