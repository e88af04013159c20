import { Entity, Unique } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Grade } from '../plant/grade.entity.js';
import { Site } from '../plant/site.entity.js';

/** Bags that came from outside: supplier, their lot, their document. */
@Fact()
@Entity('goods_receipt')
@Unique(['siteId', 'number'])
export class GoodsReceipt {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => Grade)
  gradeId!: string;

  @WordColumn()
  number!: string;

  @WordColumn()
  supplierCode!: string;

  @WordColumn()
  supplierLot!: string;

  @WordColumn()
  documentNumber!: string;

  @InstantColumn()
  receivedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
