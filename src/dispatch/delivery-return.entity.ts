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
import { Delivery } from './delivery.entity.js';
import { Site } from '../plant/site.entity.js';
import { StorePlace } from '../plant/store-place.entity.js';

/** Something of a delivery came back. The delivery itself stays as it was. */
@Fact()
@Entity('delivery_return')
@Index(['deliveryId'])
export class DeliveryReturn {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => Delivery)
  deliveryId!: string;

  /** Code of a fixed reason. */
  @WordColumn()
  why!: string;

  @TextColumn({ nullable: true })
  remarks!: string | null;

  /** Where it was put: apart from the stock. */
  @RefColumn(() => StorePlace)
  placeId!: string;

  @InstantColumn()
  returnedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
