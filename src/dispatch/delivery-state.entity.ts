import { Entity } from 'typeorm';
import { IdColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';

/** How far a delivery is. Can be rebuilt. */
@Entity('delivery_state')
export class DeliveryState {
  @IdColumn()
  deliveryId!: string;

  @WordColumn()
  status!: 'planned' | 'loading' | 'closed' | 'left' | 'cancelled';

  @WholeColumn()
  loadedCount!: number;
}
