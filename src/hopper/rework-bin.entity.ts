import { Entity, Unique } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Scale } from '../plant/scale.entity.js';
import { Site } from '../plant/site.entity.js';

/** A closed bin of opened packs or machine rejects that may go back, with its parents. Never metal rejects, floor sweepings, trade returns or unknown product. */
@Fact()
@Entity('rework_bin')
@Unique(['siteId', 'number'])
export class ReworkBin {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  number!: string;

  @WordColumn()
  content!: 'opened-packs' | 'weight-rejects' | 'start-up-packs';

  @WholeColumn()
  netGrams!: number;

  @RefColumn(() => Scale, { nullable: true })
  scaleId!: string | null;

  @InstantColumn()
  closedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
