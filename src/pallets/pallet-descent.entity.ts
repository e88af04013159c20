import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Pallet } from './pallet.entity.js';

/** A pallet was made from another: split, restacked or relabelled. The SSCC changes, the history does not. */
@Fact()
@Entity('pallet_descent')
@Index(['parentId'])
@Index(['childId'])
export class PalletDescent {
  @IdColumn()
  id!: string;

  @RefColumn(() => Pallet)
  parentId!: string;

  @RefColumn(() => Pallet)
  childId!: string;

  @WordColumn()
  how!: 'split' | 'restacked' | 'relabelled' | 'merged';

  @InstantColumn()
  happenedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
