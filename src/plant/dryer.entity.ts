import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** A dryer. */
@Fact()
@Entity('dryer')
@Unique(['siteId', 'code'])
export class Dryer {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  code!: string;

  @WordColumn()
  name!: string;
}
