import { Entity, Index } from 'typeorm';
import { IdColumn, RefColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Grade } from './grade.entity.js';
import { PackFormat } from './pack-format.entity.js';

/** A grade that a format takes. */
@Fact()
@Entity('pack_format_grade')
@Index(['formatId', 'gradeId'], { unique: true, where: '"voided_by" IS NULL' })
export class PackFormatGrade {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackFormat)
  formatId!: string;

  @RefColumn(() => Grade)
  gradeId!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
