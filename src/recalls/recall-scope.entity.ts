import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Recall } from './recall.entity.js';
import type { RecallScopeKind } from './recall-words.js';

/** One of the things that a recall is of. */
@Fact()
@Entity('recall_scope')
@Index(['recallId'])
@Index(['scopeKind', 'scopeId'])
export class RecallScope {
  @IdColumn()
  id!: string;

  @RefColumn(() => Recall)
  recallId!: string;

  @WordColumn()
  scopeKind!: RecallScopeKind;

  /** A bag, lot or run; the dryer or the line of a shift. */
  @WordColumn()
  scopeId!: string;

  /** Of a shift, or of minutes of a run: from this instant … */
  @InstantColumn({ nullable: true })
  fromAt!: string | null;

  /** … until before this one. */
  @InstantColumn({ nullable: true })
  untilAt!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
