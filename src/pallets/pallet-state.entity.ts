import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, WordColumn } from '../platform/database/columns.js';

/** Where a pallet is. Can be rebuilt; dispatch changes it only through `change-pallet-state.ts`. */
@Entity('pallet_state')
@Index(['status'])
export class PalletState {
  @IdColumn()
  palletId!: string;

  /** `returned`: it came back from a customer and stands apart until quality decides. */
  @WordColumn()
  status!: 'in-store' | 'loaded' | 'dispatched' | 'returned' | 'destroyed' | 'taken-apart';

  /** Store place, or the delivery while loaded or dispatched. */
  @WordColumn({ nullable: true })
  placeId!: string | null;

  @InstantColumn()
  changedAt!: string;
}
