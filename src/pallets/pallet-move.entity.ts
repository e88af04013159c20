import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Pallet } from './pallet.entity.js';
import { StorePlace } from '../plant/store-place.entity.js';

/** A pallet was brought to a place in the store. */
@Fact()
@Entity('pallet_move')
@Index(['palletId'])
export class PalletMove {
  @IdColumn()
  id!: string;

  @RefColumn(() => Pallet)
  palletId!: string;

  @RefColumn(() => StorePlace)
  placeId!: string;

  @InstantColumn()
  movedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
