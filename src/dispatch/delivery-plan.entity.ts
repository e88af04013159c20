import { Entity, Index } from 'typeorm';
import {
  DayColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Delivery } from './delivery.entity.js';

/** When a delivery is to leave, and under which order number, as it was last planned. The latest good row stands. */
@Fact()
@Entity('delivery_plan')
@Index(['deliveryId'])
// Over the order in capital letters, which the migration writes by hand.
@Index('ix_delivery_plan_order_key', { synchronize: false })
export class DeliveryPlan {
  @IdColumn()
  id!: string;

  @RefColumn(() => Delivery)
  deliveryId!: string;

  @WordColumn()
  orderNumber!: string;

  @DayColumn()
  plannedOn!: string;

  /** When the vehicle is to leave; null: some time that day. */
  @InstantColumn({ nullable: true })
  leavesAt!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
