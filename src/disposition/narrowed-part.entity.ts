import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { HoldNarrowing } from './hold-narrowing.entity.js';

/** One thing that a narrowing takes out of a hold: a bag, a pallet, a lot, or minutes of a run. */
@Fact()
@Entity('narrowed_part')
@Index(['narrowingId'])
export class NarrowedPart {
  @IdColumn()
  id!: string;

  @RefColumn(() => HoldNarrowing)
  narrowingId!: string;

  @WordColumn()
  unitKind!: 'bulk-bag' | 'pallet' | 'lot' | 'packing-run';

  @WordColumn()
  unitId!: string;

  /** Of a run: from this minute on … */
  @InstantColumn({ nullable: true })
  fromAt!: string | null;

  /** … up to before this one. */
  @InstantColumn({ nullable: true })
  untilAt!: string | null;
}
