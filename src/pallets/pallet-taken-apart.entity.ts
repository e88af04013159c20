import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, TextColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Pallet } from './pallet.entity.js';

/** A pallet is no more: its packs went onto other pallets (descent rows say which) or are loose. Once for each pallet. */
@Fact()
@Entity('pallet_taken_apart')
@Index(['palletId'], { unique: true, where: '"voided_by" IS NULL' })
export class PalletTakenApart {
  @IdColumn()
  id!: string;

  @RefColumn(() => Pallet)
  palletId!: string;

  @TextColumn({ nullable: true })
  reason!: string | null;

  @InstantColumn()
  takenApartAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
