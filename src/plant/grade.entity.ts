import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** A grade of sugar, and whether its bags may be tipped before their results are in. */
@Fact()
@Entity('grade')
@Unique(['siteId', 'code'])
export class Grade {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  code!: string;

  @WordColumn()
  name!: string;

  @WordColumn()
  tippingRule!: 'released-only' | 'tip-at-risk';
}
