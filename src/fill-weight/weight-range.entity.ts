import { Entity, PrimaryColumn } from 'typeorm';
import { BigWholeColumn } from '../platform/database/columns.js';

/** A range of sequences of a series that was received without a gap; ranges never touch. State: it can be rebuilt. */
@Entity('weight_range')
export class WeightRange {
  @PrimaryColumn({ type: 'varchar' })
  deviceId!: string;

  @PrimaryColumn({ type: 'varchar' })
  series!: string;

  @PrimaryColumn({ type: 'bigint' })
  fromSequence!: number;

  /** The last one received: inclusive. */
  @BigWholeColumn()
  toSequence!: number;
}
