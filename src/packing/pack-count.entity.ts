import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackingRun } from './packing-run.entity.js';

/** The cumulative count of accepted packs of a run at an instant: every minute by a device, else by hand. */
@Fact()
@Entity('pack_count')
@Index(['runId', 'countedAt'])
export class PackCount {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  @WholeColumn()
  packCount!: number;

  @InstantColumn()
  countedAt!: string;

  @WordColumn()
  occasion!:
    'start' | 'minute' | 'tip' | 'pallet' | 'stop' | 'coder-change' | 'film-change' | 'handover' | 'close' | 'other';

  @VoidedByColumn()
  voidedBy!: string | null;
}
