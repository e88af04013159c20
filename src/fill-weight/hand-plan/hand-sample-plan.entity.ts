import { Entity, Index } from 'typeorm';
import {
  FlagColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
} from '../../platform/database/columns.js';
import { Fact } from '../../platform/database/fact-table.js';
import { PackFormat } from '../../plant/pack-format.entity.js';
import { PackingLine } from '../../plant/packing-line.entity.js';
import { Site } from '../../plant/site.entity.js';

/** How often packs of a line are weighed by hand, and how many. The last version of a line and format holds. */
@Fact()
@Entity('hand_sample_plan')
@Index(['lineId'])
export class HandSamplePlan {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => PackingLine)
  lineId!: string;

  /** Null: whatever the line packs and no other plan names. */
  @RefColumn(() => PackFormat, { nullable: true })
  formatId!: string | null;

  @WholeColumn()
  everyMinutes!: number;

  @WholeColumn()
  packCount!: number;

  /** How long after it is due it counts as overdue. */
  @WholeColumn()
  graceMinutes!: number;

  /** False: from here on nothing is planned. */
  @FlagColumn()
  isInForce!: boolean;

  @InstantColumn()
  setAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
