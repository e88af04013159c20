import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, TextColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Delivery } from './delivery.entity.js';

/** A delivery will not happen. */
@Fact()
@Entity('delivery_cancel')
@Index(['deliveryId'], { unique: true, where: '"voided_by" IS NULL' })
export class DeliveryCancel {
  @IdColumn()
  id!: string;

  @RefColumn(() => Delivery)
  deliveryId!: string;

  @TextColumn()
  reason!: string;

  @InstantColumn()
  cancelledAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
