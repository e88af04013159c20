import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Customer } from '../plant/customer.entity.js';
import { Recall } from './recall.entity.js';
import type { RecallAnswerKind } from './recall-words.js';

/** What a customer said became of a part of what it got. Answers of one customer add up. */
@Fact()
@Entity('recall_answer')
@Index(['recallId'])
export class RecallAnswer {
  @IdColumn()
  id!: string;

  @RefColumn(() => Recall)
  recallId!: string;

  @RefColumn(() => Customer)
  customerId!: string;

  @WordColumn()
  answer!: RecallAnswerKind;

  @WholeColumn()
  packCount!: number;

  /** Sugar in whole bags. */
  @WholeColumn()
  bagGrams!: number;

  /** Number of the paper that shows it, or what was said, without names. */
  @TextColumn({ nullable: true })
  remarks!: string | null;

  @InstantColumn()
  answeredAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
