import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackingRun } from '../packing/packing-run.entity.js';
import { PackFormat } from '../plant/pack-format.entity.js';
import { PackingLine } from '../plant/packing-line.entity.js';
import { Site } from '../plant/site.entity.js';

/** A line is changed over from what it packed to another format: a ladder of five rungs, each with a proof. */
@Fact()
@Entity('changeover')
@Index(['lineId', 'openedAt'])
export class Changeover {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => PackingLine)
  lineId!: string;

  @RefColumn(() => PackingRun)
  fromRunId!: string;

  @RefColumn(() => PackFormat)
  toFormatId!: string;

  @InstantColumn()
  openedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
