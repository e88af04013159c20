import { Entity, Index, Unique } from 'typeorm';
import { IdColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackFormat } from '../plant/pack-format.entity.js';
import { Site } from '../plant/site.entity.js';

/** A format with a code as actually printed. */
@Fact()
@Entity('lot')
@Unique(['formatId', 'code'])
@Index(['searchCode'])
export class Lot {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => PackFormat)
  formatId!: string;

  /** As printed, without its time of day. */
  @WordColumn()
  code!: string;

  /** The code without spaces, in capitals. */
  @WordColumn()
  searchCode!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
