import { Entity, Index } from 'typeorm';
import {
  DecimalColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Sample } from './sample.entity.js';

/** One property of a sample by one method. A retest stands beside the first. */
@Fact()
@Entity('result')
@Index(['sampleId', 'property', 'method', 'retestNumber'], { unique: true, where: '"voided_by" IS NULL' })
@Index(['id'], { where: '"retest_number" > 0 AND "voided_by" IS NULL' })
export class Result {
  @IdColumn()
  id!: string;

  @RefColumn(() => Sample)
  sampleId!: string;

  /** `moisture-percent`, `colour-iu`, … */
  @WordColumn()
  property!: string;

  @WordColumn()
  method!: string;

  /** The figure as reported, in the unit that the property names. */
  @DecimalColumn()
  amount!: string;

  /** 0: the first result of this property by this method; then 1, 2, … */
  @WholeColumn()
  retestNumber!: number;

  @InstantColumn()
  analysedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
