import { Entity, Index, Unique } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { BulkBag } from '../drying/bulk-bag.entity.js';
import { Dryer } from '../plant/dryer.entity.js';
import { Site } from '../plant/site.entity.js';

/** A sample stands for a bag, for an hour or for a shift's composite of a dryer; its results cover every bag it stands for. */
@Fact()
@Entity('sample')
@Unique(['siteId', 'number'])
@Index(['bagId'])
// Lists are paged by key within a site.
@Index(['siteId', 'id'])
@Index(['dryerId', 'fromAt'])
export class Sample {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  number!: string;

  @WordColumn()
  standsFor!: 'bag' | 'hour' | 'shift';

  @RefColumn(() => BulkBag, { nullable: true })
  bagId!: string | null;

  @RefColumn(() => Dryer, { nullable: true })
  dryerId!: string | null;

  /** For an hour or a shift: bags filled to their end at or after this instant … */
  @InstantColumn({ nullable: true })
  fromAt!: string | null;

  /** … and before this one. */
  @InstantColumn({ nullable: true })
  untilAt!: string | null;

  @InstantColumn()
  takenAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
