import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** A packing line: one machine that fills packs, with its coder. */
@Fact()
@Entity('packing_line')
@Unique(['siteId', 'code'])
export class PackingLine {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  /** The short word that the coder prints for the line. */
  @WordColumn()
  code!: string;

  @WordColumn()
  name!: string;
}
