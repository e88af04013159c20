import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, WordColumn } from '../platform/database/columns.js';

/** Where a pallet is. Can be rebuilt; dispatch changes it only through `change-pallet-state.ts`. */
@Entity('pallet_state')
@Index(['status'])
export class PalletState {
  @IdColumn()
  palletId!: string;

  @WordColumn()
  status!: 'in-store' | 'loaded' | 'dispatched' | 'taken-apart';

  /** Store place, or the delivery while loaded or dispatched. */
  @WordColumn({ nullable: true })
  placeId!: string | null;

  @InstantColumn()
  changedAt!: string;
}
