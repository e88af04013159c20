import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Coder } from './coder.entity.js';

/** From an instant on, how far the coder's clock is ahead of the plant's, and how surely that is known. */
@Fact()
@Entity('coder_clock')
@Index(['coderId', 'validFrom'], { unique: true, where: '"voided_by" IS NULL' })
export class CoderClock {
  @IdColumn()
  id!: string;

  @RefColumn(() => Coder)
  coderId!: string;

  @InstantColumn()
  validFrom!: string;

  /** Positive: the coder prints a later time than it is. */
  @WholeColumn()
  offsetSeconds!: number;

  @WholeColumn()
  uncertaintySeconds!: number;

  @VoidedByColumn()
  voidedBy!: string | null;
}
