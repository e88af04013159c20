import { Entity, Index, Unique } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from '../plant/site.entity.js';

/** Nothing in its scope may go on until quality lifts it. A safety hold until a quality officer sets its class. */
@Fact()
@Entity('hold')
@Unique(['siteId', 'number'])
@Index(['scopeKind', 'scopeId'])
export class Hold {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  number!: string;

  @WordColumn()
  scopeKind!:
    | 'bulk-bag'
    | 'dryer-run'
    | 'dryer-shift'
    | 'lot'
    | 'packing-run'
    | 'packing-shift'
    | 'pallet'
    | 'hopper-period'
    | 'film-lot';

  /** The dryer or the line of a shift. */
  @WordColumn()
  scopeId!: string;

  /** For a part of a run: from this pack (its cumulative count) on … */
  @WholeColumn({ nullable: true })
  fromCount!: number | null;

  /** … up to before this one. */
  @WholeColumn({ nullable: true })
  toCount!: number | null;

  /** Of a shift, or of minutes of a run: from this instant … */
  @InstantColumn({ nullable: true })
  fromAt!: string | null;

  /** … until before this one. */
  @InstantColumn({ nullable: true })
  untilAt!: string | null;

  @TextColumn()
  reason!: string;

  @InstantColumn()
  placedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
