import { Entity, Index } from 'typeorm';
import {
  FlagColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { BulkBag } from './bulk-bag.entity.js';
import { Scale } from '../plant/scale.entity.js';

/** A bag on a scale: at the end of filling, weighed back after a part tip, or weighed again. */
@Fact()
@Entity('bag_weighing')
@Index(['bagId'])
@Index(['weighedAt'])
export class BagWeighing {
  @IdColumn()
  id!: string;

  @RefColumn(() => BulkBag)
  bagId!: string;

  @WordColumn()
  occasion!: 'filled' | 'weighed-back' | 'weighed-again';

  @WholeColumn()
  grossGrams!: number;

  @WholeColumn()
  tareGrams!: number;

  @WholeColumn()
  netGrams!: number;

  /** The tare was not weighed but taken from the bag's type. */
  @FlagColumn()
  isPresetTare!: boolean;

  @RefColumn(() => Scale)
  scaleId!: string;

  @InstantColumn()
  weighedAt!: string;

  /** The scale was overdue for its check, or had failed it. */
  @FlagColumn()
  isDoubtful!: boolean;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
