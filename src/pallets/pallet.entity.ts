import { Entity, Unique } from 'typeorm';
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
import { PackFormat } from '../plant/pack-format.entity.js';
import { Site } from '../plant/site.entity.js';

/** A logistic unit: its SSCC for life. What stands on it is its contents. */
@Fact()
@Entity('pallet')
@Unique(['sscc'])
export class Pallet {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  sscc!: string;

  @RefColumn(() => PackFormat)
  formatId!: string;

  @InstantColumn()
  builtAt!: string;

  @WholeColumn()
  packCount!: number;

  @FlagColumn()
  isFull!: boolean;

  @VoidedByColumn()
  voidedBy!: string | null;
}
