import { Entity, Index } from 'typeorm';
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

/** Quality's decision on a bag, a lot or a pallet. The latest good one stands; without one it is waiting. */
@Fact()
@Entity('decision')
@Index(['subjectKind', 'subjectId'])
export class Decision {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  subjectKind!: 'bulk-bag' | 'lot' | 'pallet';

  @WordColumn()
  subjectId!: string;

  @WordColumn()
  verdict!: 'waiting' | 'released' | 'rejected' | 'concession';

  @TextColumn({ nullable: true })
  reason!: string | null;

  @InstantColumn()
  decidedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
