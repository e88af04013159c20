import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, TextColumn, WholeColumn, WordColumn } from '../database/columns.js';

/** Work that a unit left to be done after its commit: printing, papers, mail. At least once. */
@Entity('outbox_job')
@Index(['finishedAt', 'runAfter'])
export class OutboxJob {
  @IdColumn()
  id!: string;

  @WordColumn()
  kind!: string;

  @TextColumn()
  payload!: string;

  @InstantColumn()
  createdAt!: string;

  @InstantColumn()
  runAfter!: string;

  @InstantColumn({ nullable: true })
  leasedUntil!: string | null;

  @WholeColumn()
  attempts!: number;

  @InstantColumn({ nullable: true })
  finishedAt!: string | null;

  @TextColumn({ nullable: true })
  lastError!: string | null;
}
