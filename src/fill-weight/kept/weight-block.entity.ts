import { Column, Entity, Index } from 'typeorm';
import {
  BigWholeColumn,
  BytesColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  WholeColumn,
  WordColumn,
} from '../../platform/database/columns.js';
import { PackingRun } from '../../packing/packing-run.entity.js';
import { PackWeigher } from '../pack-weigher.entity.js';
import { SumColumns } from './sum-columns.js';

/**
 * Weights of one run and one counter of a weigher, sealed: what batches held is now here. Blocks may reach into each
 * other where weights came late; no weight is in two. No fact: the bytes go when their time is up, the sums stay.
 */
@Entity('weight_block')
@Index(['runId', 'weigherId', 'firstAt'])
@Index(['weigherId', 'series', 'firstSequence'])
@Index(['lastAt'], { where: '"weights" IS NOT NULL' })
export class WeightBlock {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackWeigher)
  weigherId!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  /** Names the weigher's counter. */
  @WordColumn()
  series!: string;

  @BigWholeColumn()
  firstSequence!: number;

  @BigWholeColumn()
  lastSequence!: number;

  @WholeColumn()
  weightCount!: number;

  @InstantColumn()
  firstAt!: string;

  @InstantColumn()
  lastAt!: string;

  @Column(() => SumColumns, { prefix: 'accepted' })
  accepted!: SumColumns;

  @Column(() => SumColumns, { prefix: 'rejected' })
  rejected!: SumColumns;

  @InstantColumn()
  sealedAt!: string;

  /** As they were received, in columns (core/weight-blocks); null once they were dropped. */
  @BytesColumn({ nullable: true })
  weights!: Buffer | null;
}
