import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, TextColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Grade } from './grade.entity.js';

/** What a grade's results must be, from an instant on. */
@Fact()
@Entity('grade_specification')
@Index(['gradeId', 'validFrom'], { unique: true, where: '"voided_by" IS NULL' })
export class GradeSpecification {
  @IdColumn()
  id!: string;

  @RefColumn(() => Grade)
  gradeId!: string;

  @InstantColumn()
  validFrom!: string;

  /** Canonical text of a `Specification` of core/sugar-analysis. */
  @TextColumn()
  limits!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
