import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackingLine } from './packing-line.entity.js';
import { Site } from './site.entity.js';

/** The printer of codes on a line. Its clock is a clock of its own. */
@Fact()
@Entity('coder')
@Unique(['siteId', 'code'])
export class Coder {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => PackingLine)
  lineId!: string;

  @WordColumn()
  code!: string;
}
