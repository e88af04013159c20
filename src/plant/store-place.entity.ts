import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** A place in the store: a lane, a row, the dock. */
@Fact()
@Entity('store_place')
@Unique(['siteId', 'code'])
export class StorePlace {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  code!: string;

  @WordColumn()
  kind!: 'store' | 'dock' | 'line';
}
