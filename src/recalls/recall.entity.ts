import { Entity, Unique } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from '../plant/site.entity.js';
import type { RecallKind, RecallSureness } from './recall-words.js';

/** A recall or an exercise was opened, and its clock began to run. */
@Fact()
@Entity('recall')
@Unique(['siteId', 'number'])
export class Recall {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  number!: string;

  @WordColumn()
  kind!: RecallKind;

  @WordColumn()
  hazard!: 'safety' | 'quality';

  @TextColumn()
  reason!: string;

  @WordColumn()
  sureness!: RecallSureness;

  /** Why only what is sure and likely is recalled. */
  @TextColumn({ nullable: true })
  surenessReason!: string | null;

  /** The hold or complaint that it began with. */
  @WordColumn({ nullable: true })
  originKind!: 'hold' | 'complaint' | null;

  @WordColumn({ nullable: true })
  originId!: string | null;

  @WordColumn({ nullable: true })
  openedBy!: string | null;

  @InstantColumn()
  startedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
