import { Entity, Index } from 'typeorm';
import {
  FlagColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { HopperPeriod } from './hopper-period.entity.js';

/** Someone or something measured what is inside: between two amounts. Run down is such a level. It cuts nothing. */
@Fact()
@Entity('level_seen')
@Index(['periodId'])
export class LevelSeen {
  @IdColumn()
  id!: string;

  @RefColumn(() => HopperPeriod)
  periodId!: string;

  @WordColumn()
  how!: 'probe' | 'load-cell' | 'sight-glass' | 'run-down';

  @WholeColumn()
  lowerGrams!: number;

  @WholeColumn()
  upperGrams!: number;

  @InstantColumn()
  seenAt!: string;

  /** The time was stated by a person afterwards. */
  @FlagColumn()
  isLate!: boolean;

  @VoidedByColumn()
  voidedBy!: string | null;
}
