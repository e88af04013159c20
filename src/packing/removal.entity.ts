import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Hopper } from '../plant/hopper.entity.js';
import { PackingLine } from '../plant/packing-line.entity.js';
import { PackingRun } from './packing-run.entity.js';
import { Scale } from '../plant/scale.entity.js';
import { Site } from '../plant/site.entity.js';

/** Sugar that left a line or a hopper otherwise than in accepted packs: rejects, samples, sweepings. */
@Fact()
@Entity('removal')
@Index(['runId'])
@Index(['hopperId', 'removedAt'])
export class Removal {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  kind!: 'reject' | 'sample' | 'sweepings';

  @RefColumn(() => PackingRun, { nullable: true })
  runId!: string | null;

  @RefColumn(() => PackingLine, { nullable: true })
  lineId!: string | null;

  /** The hopper it came through. */
  @RefColumn(() => Hopper, { nullable: true })
  hopperId!: string | null;

  /** Packs, where whole packs were removed. */
  @WholeColumn({ nullable: true })
  packCount!: number | null;

  @WholeColumn()
  grams!: number;

  /** Null: count times mean. */
  @RefColumn(() => Scale, { nullable: true })
  scaleId!: string | null;

  @WordColumn()
  reason!: string;

  @WordColumn()
  fate!: 'rework' | 'waste' | 'laboratory' | 'retained';

  @InstantColumn()
  removedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
