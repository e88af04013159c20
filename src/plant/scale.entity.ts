import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** A scale: its interval, its maximum permissible error in service, and how often it is checked. */
@Fact()
@Entity('scale')
@Unique(['siteId', 'code'])
export class Scale {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  code!: string;

  @WordColumn()
  name!: string;

  @WholeColumn()
  intervalMilligrams!: number;

  @WholeColumn()
  maximumPermissibleErrorMilligrams!: number;

  @WholeColumn()
  checkEveryHours!: number;
}
