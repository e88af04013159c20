import { Column, Entity, PrimaryColumn } from 'typeorm';
import { BytesColumn, WholeColumn } from '../../platform/database/columns.js';
import { SumColumns } from './sum-columns.js';

/**
 * The weights of one weigher within one month of UTC that were measured by one yardstick, summed up, whatever their
 * runs. State: it is the sum of its hours.
 */
@Entity('weight_month')
export class WeightMonth {
  @PrimaryColumn({ type: 'varchar' })
  weigherId!: string;

  /** The instant at which the month begins. */
  @PrimaryColumn({ type: 'varchar' })
  monthAt!: string;

  /** The yardstick as one word, since its limits may be null. */
  @PrimaryColumn({ type: 'varchar' })
  measuredBy!: string;

  @WholeColumn()
  nominalMilligrams!: number;

  @WholeColumn({ nullable: true })
  t1Milligrams!: number | null;

  @WholeColumn({ nullable: true })
  t2Milligrams!: number | null;

  @WholeColumn()
  binMilligrams!: number;

  @Column(() => SumColumns, { prefix: 'accepted' })
  accepted!: SumColumns;

  @Column(() => SumColumns, { prefix: 'rejected' })
  rejected!: SumColumns;

  @BytesColumn()
  acceptedHistogram!: Buffer;

  @BytesColumn()
  rejectedHistogram!: Buffer;
}
