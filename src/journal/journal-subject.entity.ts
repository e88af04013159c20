import { Entity, Index, PrimaryColumn } from 'typeorm';
import { toWhole } from '../platform/database/stored-values.js';
import { Fact } from '../platform/database/fact-table.js';

/** Which things a journal entry is about: the way from a thing to its entries. */
@Fact()
@Entity('journal_subject')
@Index(['kind', 'id', 'sequence'])
export class JournalSubject {
  @PrimaryColumn({ type: 'varchar' })
  siteId!: string;

  @PrimaryColumn({
    type: 'bigint',
    transformer: { from: (stored: string | number) => toWhole(stored), to: (value: unknown) => value },
  })
  sequence!: number;

  @PrimaryColumn({ type: 'varchar' })
  kind!: string;

  @PrimaryColumn({ type: 'varchar' })
  id!: string;
}
