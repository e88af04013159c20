import { Entity, Index } from 'typeorm';
import { IdColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Delivery } from './delivery.entity.js';
import { Grade } from '../plant/grade.entity.js';
import { PackFormat } from '../plant/pack-format.entity.js';

/** An order line: packs of a format, or whole bags of a grade. */
@Fact()
@Entity('delivery_line')
@Index(['deliveryId'])
export class DeliveryLine {
  @IdColumn()
  id!: string;

  @RefColumn(() => Delivery)
  deliveryId!: string;

  @WholeColumn()
  lineNumber!: number;

  @RefColumn(() => PackFormat, { nullable: true })
  formatId!: string | null;

  @RefColumn(() => Grade, { nullable: true })
  gradeId!: string | null;

  /** Packs, or bags. */
  @WholeColumn()
  orderedCount!: number;

  @VoidedByColumn()
  voidedBy!: string | null;
}
