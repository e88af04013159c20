import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, VoidedByColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';

/** An entry that was not made at the server when it happened: it waited on a device, or was written on a paper form. */
@Fact()
@Entity('entry_happening')
@Index(['siteId', 'sheet', 'sheetRow', 'action'], { unique: true, where: '"voided_by" IS NULL' })
export class EntryHappening {
  /** The id of the journal's entry. */
  @IdColumn()
  entryId!: string;

  @WordColumn()
  siteId!: string;

  @WordColumn()
  action!: string;

  @WordColumn()
  how!: 'queued' | 'paper';

  @InstantColumn()
  happenedAt!: string;

  /** Number of the sheet of a paper form; null for what waited on a device. */
  @WordColumn({ nullable: true })
  sheet!: string | null;

  @WholeColumn({ nullable: true })
  sheetRow!: number | null;

  /** Who wrote the row, where it was not who keyed it in. */
  @WordColumn({ nullable: true })
  writtenBy!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
