import { Entity, Index, PrimaryColumn } from 'typeorm';
import { InstantColumn, WholeColumn, WordColumn } from '../../platform/database/columns.js';

/** An accepted pack beyond T2: kept for ever, also when the weights around it have gone. Can be rebuilt while they stand. */
@Entity('short_pack')
@Index(['runId'])
export class ShortPack {
  @PrimaryColumn({ type: 'varchar' })
  weigherId!: string;

  @PrimaryColumn({ type: 'varchar' })
  series!: string;

  @PrimaryColumn({ type: 'bigint' })
  sequence!: number;

  @WordColumn()
  runId!: string;

  @InstantColumn()
  weighedAt!: string;

  @WholeColumn()
  netMilligrams!: number;

  /** Null: none was told; -2: head 0 or none (`zeroOrNoHead` of core/weight-blocks). */
  @WholeColumn({ nullable: true })
  head!: number | null;
}
