import { Entity, Index } from 'typeorm';
import {
  FlagColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { BulkBag } from '../drying/bulk-bag.entity.js';
import { Site } from '../plant/site.entity.js';
import { HopperPeriod } from './hopper-period.entity.js';
import { ReworkBin } from './rework-bin.entity.js';

/**
 * Sugar goes into a hopper: a bag (or one of several candidates), or a rework bin. The spout is opened at one time, the
 * bag is off at another.
 */
@Fact()
@Entity('tip')
@Index(['periodId'])
@Index(['bagId'])
@Index(['siteId', 'openedAt'])
@Index(['binId'], { unique: true, where: '"voided_by" IS NULL' })
export class Tip {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => HopperPeriod)
  periodId!: string;

  @WordColumn()
  source!: 'bulk-bag' | 'one-of-several' | 'rework-bin';

  @RefColumn(() => BulkBag, { nullable: true })
  bagId!: string | null;

  @RefColumn(() => ReworkBin, { nullable: true })
  binId!: string | null;

  /** What was in it when the spout was opened. */
  @WholeColumn()
  netGrams!: number;

  @InstantColumn()
  openedAt!: string;

  @WordColumn()
  identifiedBy!: 'scan' | 'typed' | 'photo' | 'witness';

  /** Who else saw it: needed where the number could not be read. */
  @WordColumn({ nullable: true })
  secondPersonId!: string | null;

  /** It was recorded as happened, against or without a rule of the house. */
  @FlagColumn()
  hasHappened!: boolean;

  /** The time was stated by a person afterwards; it is less sure than that of a scan. */
  @FlagColumn()
  isLate!: boolean;

  @VoidedByColumn()
  voidedBy!: string | null;
}
