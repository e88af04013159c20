import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Grade } from './grade.entity.js';

/** Between what net weights a full bag of a grade usually is; the latest row holds. */
@Fact()
@Entity('grade_usual_net')
@Index(['gradeId'])
export class GradeUsualNet {
  @IdColumn()
  id!: string;

  @RefColumn(() => Grade)
  gradeId!: string;

  @WholeColumn()
  leastNetGrams!: number;

  @WholeColumn()
  mostNetGrams!: number;

  @InstantColumn()
  setAt!: string;
}
