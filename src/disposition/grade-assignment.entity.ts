import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, TextColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { BulkBag } from '../drying/bulk-bag.entity.js';
import { Grade } from '../plant/grade.entity.js';

/** A bag is given another grade than the dryer meant, with the reason. */
@Fact()
@Entity('grade_assignment')
@Index(['bagId'])
export class GradeAssignment {
  @IdColumn()
  id!: string;

  @RefColumn(() => BulkBag)
  bagId!: string;

  @RefColumn(() => Grade)
  gradeId!: string;

  @TextColumn()
  reason!: string;

  @InstantColumn()
  assignedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
