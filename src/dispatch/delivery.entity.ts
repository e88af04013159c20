import { Entity, Index } from 'typeorm';
import { DayColumn, IdColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Customer } from '../plant/customer.entity.js';
import { Site } from '../plant/site.entity.js';

/** What a customer ordered and is to get on one vehicle. */
@Fact()
@Entity('delivery')
// Over the order in capital letters, which the migration writes by hand.
@Index('ix_delivery_order_key', { synchronize: false })
export class Delivery {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => Customer)
  customerId!: string;

  @WordColumn()
  orderNumber!: string;

  @DayColumn()
  plannedOn!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
