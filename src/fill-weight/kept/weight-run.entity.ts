import { Column, Entity, Index, PrimaryColumn } from 'typeorm';
import { BytesColumn, InstantColumn, WholeColumn } from '../../platform/database/columns.js';
import { SumColumns } from './sum-columns.js';

/** All weights of one weigher in a run, summed up, and what they were measured by. State: it can be rebuilt. */
@Entity('weight_run')
@Index(['weigherId', 'firstAt', 'lastAt'])
export class WeightRun {
  @PrimaryColumn({ type: 'varchar' })
  runId!: string;

  @PrimaryColumn({ type: 'varchar' })
  weigherId!: string;

  @WholeColumn()
  nominalMilligrams!: number;

  /** A pack with less is beyond T1; null: no rule says how short a pack of this quantity may be. */
  @WholeColumn({ nullable: true })
  t1Milligrams!: number | null;

  @WholeColumn({ nullable: true })
  t2Milligrams!: number | null;

  @WholeColumn()
  binMilligrams!: number;

  @InstantColumn()
  firstAt!: string;

  @InstantColumn()
  lastAt!: string;

  @Column(() => SumColumns, { prefix: 'accepted' })
  accepted!: SumColumns;

  @Column(() => SumColumns, { prefix: 'rejected' })
  rejected!: SumColumns;

  @BytesColumn()
  acceptedHistogram!: Buffer;

  @BytesColumn()
  rejectedHistogram!: Buffer;
}
