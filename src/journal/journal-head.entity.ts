import { Entity, PrimaryColumn } from 'typeorm';
import { BigWholeColumn, WordColumn } from '../platform/database/columns.js';

/** The last entry of a site's chain. A state row: it can be rebuilt from the entries. */
@Entity('journal_head')
export class JournalHead {
  @PrimaryColumn({ type: 'varchar' })
  siteId!: string;

  @BigWholeColumn()
  sequence!: number;

  @WordColumn()
  hash!: string;
}
