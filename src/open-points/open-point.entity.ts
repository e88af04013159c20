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
import { Site } from '../plant/site.entity.js';

/** What a person must look at: raised by a rule, with its cause, who, and what to do. */
@Fact()
@Entity('open_point')
@Index(['subjectKind', 'subjectId'])
export class OpenPoint {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  /** Code of the sentence in the catalogue. */
  @WordColumn()
  cause!: string;

  /** Canonical text: what the sentence is filled with. */
  @TextColumn()
  facts!: string;

  @WordColumn()
  subjectKind!: string;

  @WordColumn()
  subjectId!: string;

  /** Who is to look at it. */
  @WordColumn()
  role!: string;

  /** Whom it concerns, where it is one person's. */
  @WordColumn({ nullable: true })
  personId!: string | null;

  @InstantColumn()
  raisedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
