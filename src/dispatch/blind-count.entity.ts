import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Delivery } from './delivery.entity.js';

/** The units on a vehicle as somebody counted them by walking round, without the list. */
@Fact()
@Entity('blind_count')
@Index(['deliveryId'])
export class BlindCount {
  @IdColumn()
  id!: string;

  @RefColumn(() => Delivery)
  deliveryId!: string;

  @WholeColumn()
  unitCount!: number;

  /** Loadings and unloadings of the delivery until then: a count holds only until the next of them. */
  @WholeColumn()
  changeCount!: number;

  @InstantColumn()
  countedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
