import { Entity, Index } from 'typeorm';
import { Hopper } from '../plant/hopper.entity.js';
import {
  BigWholeColumn,
  DecimalColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { TracerTrial } from './tracer-trial.entity.js';

/**
 * From an instant on, how a hopper is taken to flow: what *likely* is reckoned by, with the numbers of the trial that it
 * was chosen on, so that an answer can be reckoned again when the way of fitting has changed.
 */
@Fact()
@Entity('hopper_model')
@Index(['hopperId', 'validFrom'], { unique: true, where: '"voided_by" IS NULL' })
export class HopperModel {
  @IdColumn()
  id!: string;

  @RefColumn(() => Hopper)
  hopperId!: string;

  @WordColumn()
  kind!: 'first-in-first-out' | 'pour-and-drain' | 'stirred-zones';

  /** Null for first in, first out alone. */
  @RefColumn(() => TracerTrial, { nullable: true })
  trialId!: string | null;

  /** Of stirred zones; else null. */
  @WholeColumn({ nullable: true })
  zoneCount!: number | null;

  @DecimalColumn({ nullable: true })
  zoneCountStandard!: string | null;

  @BigWholeColumn({ nullable: true })
  holdUpGrams!: number | null;

  @BigWholeColumn({ nullable: true })
  holdUpStandardGrams!: number | null;

  @TextColumn({ nullable: true })
  reason!: string | null;

  @InstantColumn()
  validFrom!: string;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
