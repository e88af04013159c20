import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Pallet } from './pallet.entity.js';

/** The label that sticks on a pallet was scanned back on that pallet: the pair of pallet and label is right. */
@Fact()
@Entity('pallet_label_check')
@Index(['palletId'])
export class PalletLabelCheck {
  @IdColumn()
  id!: string;

  @RefColumn(() => Pallet)
  palletId!: string;

  /** The code of a pack on it, where one was scanned with the label. */
  @WordColumn({ nullable: true })
  packCode!: string | null;

  @InstantColumn()
  checkedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
