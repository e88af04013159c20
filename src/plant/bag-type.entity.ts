import { Entity, Index } from 'typeorm';
import { IdColumn, RefColumn, VoidedByColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** A type of bulk bag that the plant fills: what it usually weighs when empty, and what its maker lets it carry. */
@Fact()
@Entity('bag_type')
@Index(['siteId', 'code'], { unique: true, where: '"voided_by" IS NULL' })
export class BagType {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  code!: string;

  @WordColumn()
  name!: string;

  @WholeColumn()
  usualTareGrams!: number;

  /** Lightest and heaviest that an empty bag of this type has been found. */
  @WholeColumn()
  leastTareGrams!: number;

  @WholeColumn()
  mostTareGrams!: number;

  /** Safe working load, from the maker's label. */
  @WholeColumn()
  safeLoadGrams!: number;

  @VoidedByColumn()
  voidedBy!: string | null;
}
