import { Entity, Index, Unique } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { DryerRun } from './dryer-run.entity.js';
import { GoodsReceipt } from './goods-receipt.entity.js';
import { Grade } from '../plant/grade.entity.js';
import { Site } from '../plant/site.entity.js';

/** A bulk bag of about a tonne: its numbers and where its sugar comes from. Its weights are weighings. */
@Fact()
@Entity('bulk_bag')
@Unique(['siteId', 'number'])
@Unique(['sscc'])
@Index(['dryerRunId'])
// Lists are paged by key within a site.
@Index(['siteId', 'id'])
// Over the lot in capital letters, which the migration writes by hand.
@Index('ix_bulk_bag_liner_lot_key', { synchronize: false })
export class BulkBag {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  /** Short number with its check character. */
  @WordColumn()
  number!: string;

  @WordColumn()
  sscc!: string;

  @WordColumn()
  origin!: 'dryer-run' | 'receipt' | 'opening-stock';

  @RefColumn(() => DryerRun, { nullable: true })
  dryerRunId!: string | null;

  @RefColumn(() => GoodsReceipt, { nullable: true })
  receiptId!: string | null;

  @RefColumn(() => Grade)
  intendedGradeId!: string;

  /** Lot of the bag or its liner, traced like food. */
  @WordColumn({ nullable: true })
  linerLot!: string | null;

  /** Safe working load, from the maker's label. */
  @WholeColumn()
  safeLoadGrams!: number;

  @InstantColumn()
  fillStartedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
