import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Recall } from './recall.entity.js';

/** A recall was closed and its figures signed as they stood. */
@Fact()
@Entity('recall_signing')
@Index(['recallId'], { unique: true, where: '"voided_by" IS NULL' })
export class RecallSigning {
  @IdColumn()
  id!: string;

  @RefColumn(() => Recall)
  recallId!: string;

  /** Canonical text: sums, rates, customers by code, records and links. */
  @TextColumn()
  figures!: string;

  /** The signer's own words on what does not add up. */
  @TextColumn({ nullable: true })
  explanation!: string | null;

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
