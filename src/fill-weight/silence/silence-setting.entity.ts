import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WholeColumn } from '../../platform/database/columns.js';
import { Fact } from '../../platform/database/fact-table.js';
import { PackWeigher } from '../pack-weigher.entity.js';

/** For how long a pack weigher may send nothing while packs are counted. The last one that was set holds. */
@Fact()
@Entity('silence_setting')
@Index(['weigherId'])
export class SilenceSetting {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackWeigher)
  weigherId!: string;

  /** Null: it sends when it likes, and nobody waits for it. */
  @WholeColumn({ nullable: true })
  silentAfterMinutes!: number | null;

  @InstantColumn()
  setAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
