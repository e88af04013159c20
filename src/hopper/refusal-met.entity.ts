import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, WordColumn } from '../platform/database/columns.js';

/**
 * Somebody wanted to tip a bag and was refused. No fact of production: it only lets that person say, for a while, that the
 * bag is in all the same. Rows go after a day.
 */
@Entity('refusal_met')
@Index(['bagId', 'metAt'])
export class RefusalMet {
  @IdColumn()
  id!: string;

  @WordColumn()
  siteId!: string;

  @WordColumn()
  personId!: string;

  @WordColumn()
  hopperId!: string;

  @WordColumn()
  bagId!: string;

  /** The code of the refusal. */
  @WordColumn()
  code!: string;

  @InstantColumn()
  metAt!: string;
}
