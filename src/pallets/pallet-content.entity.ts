import { Entity, Index } from 'typeorm';
import { IdColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Lot } from '../packing/lot.entity.js';
import { PackingRun } from '../packing/packing-run.entity.js';
import { Pallet } from './pallet.entity.js';

/** A half-open range of a run's cumulative count, all of one lot, on a pallet. */
@Fact()
@Entity('pallet_content')
@Index(['palletId'])
@Index(['runId', 'fromCount'])
@Index(['lotId'])
export class PalletContent {
  @IdColumn()
  id!: string;

  @RefColumn(() => Pallet)
  palletId!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  @RefColumn(() => Lot)
  lotId!: string;

  @WholeColumn()
  fromCount!: number;

  @WholeColumn()
  toCount!: number;

  @VoidedByColumn()
  voidedBy!: string | null;
}
