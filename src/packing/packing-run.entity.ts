import { Entity, Index, Unique } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackFormat } from '../plant/pack-format.entity.js';
import { PackingLine } from '../plant/packing-line.entity.js';
import { Site } from '../plant/site.entity.js';

/** A format on a line from start to close; it may cross a shift change. */
@Fact()
@Entity('packing_run')
@Unique(['siteId', 'number'])
@Index(['lineId', 'startedAt'])
export class PackingRun {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  number!: string;

  @RefColumn(() => PackingLine)
  lineId!: string;

  @RefColumn(() => PackFormat)
  formatId!: string;

  @InstantColumn()
  startedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
