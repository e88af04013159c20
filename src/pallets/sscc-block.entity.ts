import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from '../plant/site.entity.js';

/** Numbers of pallets set aside: for a device that may lose the network, or for a sheet of a paper form. */
@Fact()
@Entity('sscc_block')
@Index(['deviceId'])
export class SsccBlock {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn({ nullable: true })
  deviceId!: string | null;

  /** Number of the sheet. */
  @WordColumn({ nullable: true })
  sheet!: string | null;

  @InstantColumn()
  setAsideAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
