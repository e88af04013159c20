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
import { Hold } from './hold.entity.js';

/** A quality officer takes parts out of what a hold reaches. Void: the hold was widened again. */
@Fact()
@Entity('hold_narrowing')
@Index(['holdId'])
export class HoldNarrowing {
  @IdColumn()
  id!: string;

  @RefColumn(() => Hold)
  holdId!: string;

  /** The class that the hold had then: until one is set it is a safety hold. */
  @WordColumn()
  hazard!: 'safety' | 'quality';

  @TextColumn()
  reason!: string;

  /** What a safety hold takes: why these parts can do no harm. Null: it narrows a quality hold only. */
  @TextColumn({ nullable: true })
  assessment!: string | null;

  /** Who signed; names stay with the people. */
  @WordColumn({ nullable: true })
  personId!: string | null;

  @InstantColumn()
  narrowedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
