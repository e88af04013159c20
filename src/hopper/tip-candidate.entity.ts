import { Entity, Index } from 'typeorm';
import { IdColumn, RefColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { BulkBag } from '../drying/bulk-bag.entity.js';
import { Tip } from './tip.entity.js';

/** A bag that a tip with an unreadable number may have been. */
@Fact()
@Entity('tip_candidate')
@Index(['tipId'])
@Index(['bagId'])
export class TipCandidate {
  @IdColumn()
  id!: string;

  @RefColumn(() => Tip)
  tipId!: string;

  @RefColumn(() => BulkBag)
  bagId!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
