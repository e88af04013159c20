import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn } from '../../platform/database/columns.js';
import { PackingRun } from '../../packing/packing-run.entity.js';
import { PackWeigher } from '../pack-weigher.entity.js';

/**
 * A time in which packs of a run were counted and no weights of them came. How many of its packs are unverified is asked
 * of counts and weights each time, so that weights which come late count.
 */
@Entity('weigher_silence')
@Index(['weigherId', 'runId'], { unique: true, where: '"until_at" IS NULL' })
@Index(['runId'])
export class WeigherSilence {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackWeigher)
  weigherId!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  /** The last weight before it, else when the run or the weigher began. */
  @InstantColumn()
  sinceAt!: string;

  /** Null: no weights yet. */
  @InstantColumn({ nullable: true })
  untilAt!: string | null;

  @InstantColumn()
  foundAt!: string;
}
