import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Delivery } from './delivery.entity.js';

/** Loading is done and the note is numbered. */
@Fact()
@Entity('delivery_close')
@Index(['deliveryId'], { unique: true, where: '"voided_by" IS NULL' })
export class DeliveryClose {
  @IdColumn()
  id!: string;

  @RefColumn(() => Delivery)
  deliveryId!: string;

  @WordColumn()
  seal!: string;

  /** Code of a fixed reason why less went than was ordered. */
  @WordColumn({ nullable: true })
  shortCode!: string | null;

  @TextColumn({ nullable: true })
  shortReason!: string | null;

  /** Written on the note as it is. */
  @TextColumn({ nullable: true })
  remarks!: string | null;

  /** Units counted by walking, without the list. */
  @WholeColumn()
  blindCount!: number;

  @WordColumn()
  paperId!: string;

  @InstantColumn()
  closedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
