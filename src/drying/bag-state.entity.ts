import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';

/** Where a bag is and how much is left in it. Can be rebuilt from the facts; later steps change it only through `change-bag-state.ts`. */
@Entity('bag_state')
@Index(['status'])
export class BagState {
  @IdColumn()
  bagId!: string;

  /** `hanging`: its spout is open over a hopper; `opened`: part tipped and weighed back; `returned`: came back from a customer. */
  @WordColumn()
  status!: 'filling' | 'full' | 'opened' | 'hanging' | 'empty' | 'loaded' | 'dispatched' | 'returned' | 'destroyed';

  @WholeColumn()
  remainingGrams!: number;

  /** Store place, hopper or delivery, after the status. */
  @WordColumn({ nullable: true })
  placeId!: string | null;

  @InstantColumn()
  changedAt!: string;
}
