import { Entity, Index, Unique } from 'typeorm';
import {
  BigWholeColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Hopper } from '../plant/hopper.entity.js';
import { Site } from '../plant/site.entity.js';

/** The account of a hopper and all the lines it feeds over a time, as it was signed. */
@Fact()
@Entity('account')
@Unique(['siteId', 'number'])
@Index(['hopperId', 'untilAt'])
export class Account {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  number!: string;

  @RefColumn(() => Hopper)
  hopperId!: string;

  @InstantColumn()
  fromAt!: string;

  @InstantColumn()
  untilAt!: string;

  /** Canonical text: the lines of the account in grams, with their records. */
  @TextColumn()
  lines!: string;

  @BigWholeColumn()
  inGrams!: number;

  @BigWholeColumn()
  outGrams!: number;

  @BigWholeColumn({ nullable: true })
  differenceGrams!: number | null;

  @BigWholeColumn({ nullable: true })
  standardUncertaintyGrams!: number | null;

  @WordColumn()
  verdict!: string;

  /** The lead's own explanation of the difference. */
  @TextColumn({ nullable: true })
  statedLoss!: string | null;

  /** Hash of the journal's head when it was signed. */
  @WordColumn()
  journalHead!: string;

  @WordColumn({ nullable: true })
  signedBy!: string | null;

  @InstantColumn()
  signedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
