import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Recall } from './recall.entity.js';
import type { RecallMark as Mark } from './recall-words.js';

/** A moment of a recall: the first list of customers, the stock blocked, the clock stopped. */
@Fact()
@Entity('recall_mark')
@Index(['recallId', 'mark'], { unique: true, where: '"voided_by" IS NULL' })
export class RecallMark {
  @IdColumn()
  id!: string;

  @RefColumn(() => Recall)
  recallId!: string;

  @WordColumn()
  mark!: Mark;

  @InstantColumn()
  markedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
