import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackingRun } from './packing-run.entity.js';

/** A run is closed, with its last count. */
@Fact()
@Entity('packing_run_close')
@Index(['runId'], { unique: true, where: '"voided_by" IS NULL' })
export class PackingRunClose {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  @WholeColumn()
  packCount!: number;

  @InstantColumn()
  closedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
