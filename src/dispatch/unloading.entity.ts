import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, TextColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Loading } from './loading.entity.js';

/** What was loaded came off again before the delivery was closed. */
@Fact()
@Entity('unloading')
@Index(['loadingId'], { unique: true, where: '"voided_by" IS NULL' })
export class Unloading {
  @IdColumn()
  id!: string;

  @RefColumn(() => Loading)
  loadingId!: string;

  @TextColumn()
  reason!: string;

  @InstantColumn()
  unloadedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
