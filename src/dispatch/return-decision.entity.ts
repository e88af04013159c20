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
import { ReturnedUnit } from './returned-unit.entity.js';

/** What quality decided about a unit that came back. */
@Fact()
@Entity('return_decision')
@Index(['unitId'], { unique: true, where: '"voided_by" IS NULL' })
export class ReturnDecision {
  @IdColumn()
  id!: string;

  @RefColumn(() => ReturnedUnit)
  unitId!: string;

  @WordColumn()
  fate!: 'restock' | 'destroy';

  @TextColumn()
  reason!: string;

  @InstantColumn()
  decidedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
