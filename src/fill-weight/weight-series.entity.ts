import { Entity, PrimaryColumn } from 'typeorm';
import { BigWholeColumn, InstantColumn } from '../platform/database/columns.js';

/** What was received of one counter of a weigher. State: it can be rebuilt from the weights. */
@Entity('weight_series')
export class WeightSeries {
  @PrimaryColumn({ type: 'varchar' })
  deviceId!: string;

  @PrimaryColumn({ type: 'varchar' })
  series!: string;

  @BigWholeColumn()
  weightCount!: number;

  @InstantColumn()
  lastReceivedAt!: string;
}
