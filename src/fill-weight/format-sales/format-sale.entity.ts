import { Entity, Index } from 'typeorm';
import {
  DecimalColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WordColumn,
} from '../../platform/database/columns.js';
import { Fact } from '../../platform/database/fact-table.js';
import { PackFormat } from '../../plant/pack-format.entity.js';

/** Where a format is sold, and what a kilogram of it is worth, from an instant on. */
@Fact()
@Entity('format_sale')
@Index(['formatId', 'validFrom'], { unique: true, where: '"voided_by" IS NULL' })
export class FormatSale {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackFormat)
  formatId!: string;

  /** Canonical text: the markets, the first one first. */
  @TextColumn()
  markets!: string;

  /** Null: no money is said. */
  @DecimalColumn({ nullable: true })
  pricePerKilogram!: string | null;

  /** Of the price: three letters of ISO 4217. Null: nobody said. */
  @WordColumn({ nullable: true })
  currency!: string | null;

  @InstantColumn()
  validFrom!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
