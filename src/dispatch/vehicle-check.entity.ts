import { Entity, Index } from 'typeorm';
import {
  FlagColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Delivery } from './delivery.entity.js';

/** The vehicle was looked at before loading. */
@Fact()
@Entity('vehicle_check')
@Index(['deliveryId'])
export class VehicleCheck {
  @IdColumn()
  id!: string;

  @RefColumn(() => Delivery)
  deliveryId!: string;

  @WordColumn()
  registration!: string;

  @WordColumn()
  haulierCode!: string;

  /** Canonical text: each point of the check with yes or no. */
  @TextColumn()
  answers!: string;

  @FlagColumn()
  passed!: boolean;

  @InstantColumn()
  checkedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
