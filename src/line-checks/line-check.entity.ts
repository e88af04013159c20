import { Entity, Index } from 'typeorm';
import { BulkBag } from '../drying/bulk-bag.entity.js';
import { PackingRun } from '../packing/packing-run.entity.js';
import {
  FlagColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackingLine } from '../plant/packing-line.entity.js';
import { Site } from '../plant/site.entity.js';
import { CheckPlan } from './check-plan.entity.js';
import type { CheckAction } from './check-words.js';

/**
 * A check was made, passed or failed. Where in the run it stands is read from the counts around its time, so that a
 * corrected count moves it too.
 */
@Fact()
@Entity('line_check')
@Index(['planId', 'occurredAt'])
@Index(['lineId', 'occurredAt'])
export class LineCheck {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => CheckPlan)
  planId!: string;

  /** What the plan said then. */
  @RefColumn(() => CheckPlan)
  planVersionId!: string;

  @RefColumn(() => PackingLine)
  lineId!: string;

  /** Null: no run was open, or the check is of a bag. */
  @RefColumn(() => PackingRun, { nullable: true })
  runId!: string | null;

  /** The bag that a torn-bag check is about. */
  @RefColumn(() => BulkBag, { nullable: true })
  bagId!: string | null;

  @InstantColumn()
  occurredAt!: string;

  @FlagColumn()
  passed!: boolean;

  /** Canonical text: a list of `PieceResult`. */
  @TextColumn()
  results!: string;

  /** What was read off a pack, and what should have stood there. */
  @WordColumn({ nullable: true })
  readCode!: string | null;

  @WordColumn({ nullable: true })
  intendedCode!: string | null;

  @WordColumn({ nullable: true })
  action!: CheckAction | null;

  @TextColumn({ nullable: true })
  note!: string | null;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @WordColumn({ nullable: true })
  secondPersonId!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
