import { Column, Entity, Index, PrimaryColumn } from 'typeorm';
import { BytesColumn } from '../../platform/database/columns.js';
import { SumColumns } from './sum-columns.js';

/** The weights of one weigher in a run within one hour of UTC, summed up. State: it can be rebuilt. */
@Entity('weight_hour')
@Index(['weigherId', 'hourAt'])
export class WeightHour {
  @PrimaryColumn({ type: 'varchar' })
  runId!: string;

  @PrimaryColumn({ type: 'varchar' })
  weigherId!: string;

  /** The instant at which the hour begins. */
  @PrimaryColumn({ type: 'varchar' })
  hourAt!: string;

  @Column(() => SumColumns, { prefix: 'accepted' })
  accepted!: SumColumns;

  @Column(() => SumColumns, { prefix: 'rejected' })
  rejected!: SumColumns;

  @BytesColumn()
  acceptedHistogram!: Buffer;

  @BytesColumn()
  rejectedHistogram!: Buffer;

  /** The accepted packs of each minute (core/weight-blocks/minute-sums); null of hours summed up before this was kept. */
  @BytesColumn({ nullable: true })
  acceptedMinutes!: Buffer | null;
}
