import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Hopper } from './hopper.entity.js';
import { PackingLine } from './packing-line.entity.js';
import { Site } from './site.entity.js';

/** From an instant on, a line is fed by this hopper (by none, when null). */
@Fact()
@Entity('hopper_line')
@Index(['lineId', 'validFrom'], { unique: true, where: '"voided_by" IS NULL' })
export class HopperLine {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => PackingLine)
  lineId!: string;

  @RefColumn(() => Hopper, { nullable: true })
  hopperId!: string | null;

  @InstantColumn()
  validFrom!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
