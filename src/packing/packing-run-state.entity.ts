import { Entity, Unique } from 'typeorm';
import { IdColumn, InstantColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';

/** Whether a run is open and how many packs it has counted. Can be rebuilt. */
@Entity('packing_run_state')
@Unique(['openLineId'])
export class PackingRunState {
  @IdColumn()
  runId!: string;

  /** The line while the run is open, else null: one open run a line. */
  @WordColumn({ nullable: true })
  openLineId!: string | null;

  /** Accepted packs so far: the last good count. */
  @WholeColumn()
  packCount!: number;

  @InstantColumn()
  lastCountedAt!: string;
}
