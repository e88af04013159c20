import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** A hopper over packing machines. */
@Fact()
@Entity('hopper')
@Unique(['siteId', 'code'])
export class Hopper {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  code!: string;

  @WordColumn()
  name!: string;

  /** With the chute and a hanging bag: more can never be inside. */
  @WholeColumn()
  capacityGrams!: number;

  /** How *likely* is computed: `first-in-first-out` so far. */
  @WordColumn()
  flowModel!: string;

  /** *Likely* from this share of some packs on, at most one pack (1 = 0.1 %, our own value, no source). */
  @WholeColumn()
  likelyPermille!: number;
}
