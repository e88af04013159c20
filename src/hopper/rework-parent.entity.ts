import { Entity, Index } from 'typeorm';
import { IdColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackingRun } from '../packing/packing-run.entity.js';
import { ReworkBin } from './rework-bin.entity.js';

/** A range of a run's packs that a rework bin came from. */
@Fact()
@Entity('rework_parent')
@Index(['binId'])
@Index(['runId'])
export class ReworkParent {
  @IdColumn()
  id!: string;

  @RefColumn(() => ReworkBin)
  binId!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  @WholeColumn()
  fromCount!: number;

  @WholeColumn()
  toCount!: number;

  @VoidedByColumn()
  voidedBy!: string | null;
}
