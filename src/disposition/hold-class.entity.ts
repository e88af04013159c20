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

/** A quality officer sets the class of a hold; the latest good row stands. */
@Fact()
@Entity('hold_class')
@Index(['holdId'])
export class HoldClass {
  @IdColumn()
  id!: string;

  @RefColumn(() => Hold)
  holdId!: string;

  @WordColumn()
  hazard!: 'safety' | 'quality';

  @TextColumn()
  reason!: string;

  @InstantColumn()
  setAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
