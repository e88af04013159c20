import { Entity, Index } from 'typeorm';
import {
  FlagColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackFormat } from '../plant/pack-format.entity.js';
import { PackingLine } from '../plant/packing-line.entity.js';
import { Site } from '../plant/site.entity.js';
import type { CheckKind } from './check-words.js';

/** What is checked at a line, how often and with what, from an instant on. A later version of the same plan takes over. */
@Fact()
@Entity('check_plan')
@Index(['planId', 'validFrom'], { unique: true, where: '"voided_by" IS NULL' })
@Index(['lineId', 'kind'])
export class CheckPlan {
  @IdColumn()
  id!: string;

  /** The id of its first version: what checks and open points speak of. */
  @RefColumn(() => CheckPlan)
  planId!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => PackingLine)
  lineId!: string;

  /** Null: whatever the line packs. */
  @RefColumn(() => PackFormat, { nullable: true })
  formatId!: string | null;

  @WordColumn()
  kind!: CheckKind;

  /** The thing that is checked, by the plant's own name: two detectors on a line are two. */
  @WordColumn()
  station!: string;

  @WholeColumn({ nullable: true })
  everyMinutes!: number | null;

  /** How long after it is due it counts as overdue. */
  @WholeColumn()
  graceMinutes!: number;

  /** Canonical text: a list of `CheckEvent`. */
  @TextColumn()
  events!: string;

  /** Canonical text: a list of `TestPiece`. */
  @TextColumn()
  testPieces!: string;

  @FlagColumn()
  needsSecondPerson!: boolean;

  /** False: from here on the plan is not in force. */
  @FlagColumn()
  isInForce!: boolean;

  @InstantColumn()
  validFrom!: string;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
