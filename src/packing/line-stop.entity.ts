import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackingRun } from './packing-run.entity.js';

/** A line stands still, and why. When it runs again is a fact of its own. */
@Fact()
@Entity('line_stop')
@Index(['runId'])
export class LineStop {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  @WordColumn()
  reason!: string;

  @InstantColumn()
  stoppedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
