import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** A retail pack as it is sold: one GTIN. A change of its content is a new format. */
@Fact()
@Entity('pack_format')
@Unique(['siteId', 'code'])
export class PackFormat {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  code!: string;

  @WordColumn()
  name!: string;

  /** 14 digits. */
  @WordColumn()
  gtin!: string;

  @WholeColumn()
  nominalGrams!: number;

  /** Hard lower limit of the mean net while nothing was weighed. */
  @WholeColumn()
  assumedLowerMilligrams!: number;

  /** Hard upper limit of the mean net while nothing was weighed. */
  @WholeColumn()
  assumedUpperMilligrams!: number;

  @WholeColumn()
  packTareGrams!: number;

  @WholeColumn()
  packsPerPallet!: number;

  @WholeColumn()
  palletTareGrams!: number;

  /** What the coder prints, in the pattern language of core/identifiers. */
  @WordColumn()
  codePattern!: string;

  /** Null: no date is printed. */
  @WholeColumn({ nullable: true })
  bestBeforeMonths!: number | null;
}
