import { Entity, Index } from 'typeorm';
import { BigWholeColumn, DecimalColumn, IdColumn, RefColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { TracerTrial } from './tracer-trial.entity.js';

/** Sugar taken behind the hopper during a trial: how much had been packed by then, and its colour. */
@Fact()
@Entity('tracer_sample')
@Index(['trialId'])
export class TracerSample {
  @IdColumn()
  id!: string;

  @RefColumn(() => TracerTrial)
  trialId!: string;

  /** Packed on all lines of the hopper since the second bag began to go in. */
  @BigWholeColumn()
  fromGrams!: number;

  @BigWholeColumn()
  toGrams!: number;

  @DecimalColumn()
  colourIu!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
