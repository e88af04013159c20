import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, TextColumn, VoidedByColumn, WordColumn } from '../database/columns.js';
import { Fact } from '../database/fact-table.js';

/** A paper or label that was given out: its number and the facts frozen at that moment. The PDF is made after. */
@Fact()
@Entity('paper')
@Index(['siteId', 'number'], { unique: true })
@Index(['subjectKind', 'subjectId'])
export class Paper {
  @IdColumn()
  id!: string;

  @WordColumn()
  siteId!: string;

  /** The kind names the renderer: `delivery-note`, `bag-label`, `pallet-label`, `lot-label`. */
  @WordColumn()
  kind!: string;

  /** Which edition of the renderer made it: the same facts give the same bytes for ever. */
  @WordColumn()
  edition!: string;

  /** Null for labels, which carry the number of what they stick to. */
  @WordColumn({ nullable: true })
  number!: string | null;

  @WordColumn()
  subjectKind!: string;

  @WordColumn()
  subjectId!: string;

  /** Canonical text. */
  @TextColumn()
  facts!: string;

  @InstantColumn()
  issuedAt!: string;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
