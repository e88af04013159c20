import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackingRun } from './packing-run.entity.js';

/** Packs loose on belts and tables, counted at handover. */
@Fact()
@Entity('loose_count')
@Index(['runId'])
export class LooseCount {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  @WholeColumn()
  packCount!: number;

  @InstantColumn()
  countedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
