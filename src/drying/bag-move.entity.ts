import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { BulkBag } from './bulk-bag.entity.js';
import { StorePlace } from '../plant/store-place.entity.js';

/** A bag was put at a place of the store. */
@Fact()
@Entity('bag_move')
@Index(['bagId'])
export class BagMove {
  @IdColumn()
  id!: string;

  @RefColumn(() => BulkBag)
  bagId!: string;

  @RefColumn(() => StorePlace)
  placeId!: string;

  @InstantColumn()
  movedAt!: string;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
