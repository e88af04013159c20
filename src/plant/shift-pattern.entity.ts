import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, TextColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** The shifts of a site from an instant on. A later row takes over; history is never computed anew. */
@Fact()
@Entity('shift_pattern')
@Index(['siteId', 'validFrom'], { unique: true, where: '"voided_by" IS NULL' })
export class ShiftPatternVersion {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @InstantColumn()
  validFrom!: string;

  /** Canonical text of a `ShiftPattern` of core/shift-calendar. */
  @TextColumn()
  pattern!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
