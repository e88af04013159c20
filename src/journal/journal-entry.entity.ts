import { Column, Entity, PrimaryColumn, Unique } from 'typeorm';
import { BigWholeColumn, InstantColumn, TextColumn, WordColumn } from '../platform/database/columns.js';
import { toWhole } from '../platform/database/stored-values.js';
import { Fact } from '../platform/database/fact-table.js';

/** One accepted change. It holds ids, never names, so that names can go when their time is up. */
@Fact()
@Entity('journal_entry')
@Unique(['id'])
export class JournalEntry {
  @PrimaryColumn({ type: 'varchar' })
  siteId!: string;

  @PrimaryColumn({
    type: 'bigint',
    transformer: { from: (stored: string | number) => toWhole(stored), to: (value: unknown) => value },
  })
  sequence!: number;

  @WordColumn()
  id!: string;

  @InstantColumn()
  recordedAt!: string;

  @InstantColumn()
  occurredAt!: string;

  /** What was stated as the time of happening, where it was not taken as it stood. */
  @InstantColumn({ nullable: true })
  statedAt!: string | null;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @WordColumn({ nullable: true })
  deviceId!: string | null;

  /** How far the device's clock was ahead of the server's when it sent this. */
  @BigWholeColumn({ nullable: true })
  deviceOffsetMilliseconds!: number | null;

  @WordColumn()
  action!: string;

  @WordColumn()
  subjectKind!: string;

  @WordColumn()
  subjectId!: string;

  /** The other things that this change touches, as canonical text. */
  @TextColumn()
  touches!: string;

  /** Canonical text, or null. */
  @TextColumn({ nullable: true })
  before!: string | null;

  @TextColumn({ nullable: true })
  after!: string | null;

  @TextColumn({ nullable: true })
  reason!: string | null;

  @Column({ type: 'varchar' })
  previousHash!: string;

  @Column({ type: 'varchar' })
  hash!: string;
}
