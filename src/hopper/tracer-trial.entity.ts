import { Entity, Index } from 'typeorm';
import { BulkBag } from '../drying/bulk-bag.entity.js';
import { Hopper } from '../plant/hopper.entity.js';
import {
  BigWholeColumn,
  DecimalColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';

/** Two bags that differ in colour went through a hopper one after the other, and samples were taken behind it. */
@Fact()
@Entity('tracer_trial')
@Index(['hopperId', 'number'], { unique: true })
export class TracerTrial {
  @IdColumn()
  id!: string;

  @RefColumn(() => Hopper)
  hopperId!: string;

  /** Counts the trials of a hopper, those withdrawn included. */
  @WholeColumn()
  number!: number;

  /** It filled all that moves when the other began to go in; the last of several alike. */
  @RefColumn(() => BulkBag)
  beforeBagId!: string;

  /** It lasted until the last sample; the first of several alike. */
  @RefColumn(() => BulkBag)
  afterBagId!: string;

  @DecimalColumn()
  beforeColourIu!: string;

  @DecimalColumn()
  afterColourIu!: string;

  /** Standard uncertainty of each colour, by the method's repeatability or the laboratory's retests. */
  @DecimalColumn()
  standardIu!: string;

  /** What a pack holds, where samples were placed by packs; null: by kilograms. */
  @WholeColumn({ nullable: true })
  packGrams!: number | null;

  /** What lay inside when the second bag began to go in; null: nobody looked. */
  @BigWholeColumn({ nullable: true })
  insideGrams!: number | null;

  @TextColumn({ nullable: true })
  note!: string | null;

  @InstantColumn()
  madeAt!: string;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
