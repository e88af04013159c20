import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { DryerRun } from './dryer-run.entity.js';

/** A dryer run has ended. */
@Fact()
@Entity('dryer_run_end')
@Index(['dryerRunId'], { unique: true, where: '"voided_by" IS NULL' })
export class DryerRunEnd {
  @IdColumn()
  id!: string;

  @RefColumn(() => DryerRun)
  dryerRunId!: string;

  @InstantColumn()
  endedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
