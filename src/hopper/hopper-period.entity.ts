import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Hopper } from '../plant/hopper.entity.js';

/** From one proven empty to the next. Its residue is an addition with all bags of the old period as possible parents. */
@Fact()
@Entity('hopper_period')
@Index(['previousPeriodId'])
// The period of an instant is found from there, not from the latest one backwards.
@Index(['hopperId', 'startedAt'])
@Index(['hopperId', 'number'], { unique: true, where: '"voided_by" IS NULL' })
export class HopperPeriod {
  @IdColumn()
  id!: string;

  @RefColumn(() => Hopper)
  hopperId!: string;

  @WholeColumn()
  number!: number;

  @InstantColumn()
  startedAt!: string;

  /** Null: the first, or the residue was 0 and the thread is cut. */
  @WordColumn({ nullable: true })
  previousPeriodId!: string | null;

  @WholeColumn()
  residueLowerGrams!: number;

  @WholeColumn()
  residueUpperGrams!: number;

  @VoidedByColumn()
  voidedBy!: string | null;
}
