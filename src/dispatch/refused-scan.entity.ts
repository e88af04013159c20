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
import { Delivery } from './delivery.entity.js';

/** A unit was scanned at the dock and may not go: kept, since a label may be wrong or a pallet in the wrong lane. */
@Fact()
@Entity('refused_scan')
@Index(['deliveryId'])
export class RefusedScan {
  @IdColumn()
  id!: string;

  @RefColumn(() => Delivery)
  deliveryId!: string;

  /** As scanned. */
  @TextColumn()
  scanned!: string;

  /** Code of the refusal. */
  @WordColumn()
  code!: string;

  /** What its sentence is filled with: canonical text. */
  @TextColumn()
  facts!: string;

  @InstantColumn()
  refusedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
