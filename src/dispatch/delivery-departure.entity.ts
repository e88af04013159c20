import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Delivery } from './delivery.entity.js';

/** The vehicle left through the gate. */
@Fact()
@Entity('delivery_departure')
@Index(['deliveryId'], { unique: true, where: '"voided_by" IS NULL' })
export class DeliveryDeparture {
  @IdColumn()
  id!: string;

  @RefColumn(() => Delivery)
  deliveryId!: string;

  @InstantColumn()
  leftAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
