import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { BagType } from '../plant/bag-type.entity.js';
import { BulkBag } from './bulk-bag.entity.js';

/** Of which type a bag is, where it was said when it was hung up. */
@Fact()
@Entity('bag_type_use')
@Unique(['bagId'])
export class BagTypeUse {
  @IdColumn()
  id!: string;

  @RefColumn(() => BulkBag)
  bagId!: string;

  @RefColumn(() => BagType)
  bagTypeId!: string;
}
