import { Entity, Index } from 'typeorm';
import { IdColumn, RefColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { NarrowedPart } from './narrowed-part.entity.js';

/**
 * What the officer looked at when a part was taken out of a hold: packs of a run, or a bag whose sugar may be in it. What
 * comes to the part later is not covered by it.
 */
@Fact()
@Entity('narrowing_ground')
@Index(['partId'])
export class NarrowingGround {
  @IdColumn()
  id!: string;

  @RefColumn(() => NarrowedPart)
  partId!: string;

  @WordColumn({ nullable: true })
  runId!: string | null;

  @WholeColumn({ nullable: true })
  fromCount!: number | null;

  @WholeColumn({ nullable: true })
  toCount!: number | null;

  @WordColumn({ nullable: true })
  bagId!: string | null;

  /** The hopper period that the bag came through. */
  @WordColumn({ nullable: true })
  periodId!: string | null;

  /** What of the bag could be in the part then. */
  @WholeColumn({ nullable: true })
  mostGrams!: number | null;

  @WordColumn({ nullable: true })
  word!: 'sure' | 'likely' | 'possible' | null;
}
