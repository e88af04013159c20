import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from '../plant/site.entity.js';

/** A tablet, desk computer, handheld or machine. A shared tablet is enrolled; a machine has an API token. */
@Fact()
@Entity('device')
@Unique(['siteId', 'code'])
export class Device {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  code!: string;

  @WordColumn()
  kind!: 'shared-tablet' | 'desk' | 'handheld' | 'machine';
}
