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
import { Device } from '../people/device.entity.js';
import { PackingLine } from '../plant/packing-line.entity.js';
import { Site } from '../plant/site.entity.js';

/** A machine on a line that weighs every pack and sends the weights. A machine weighs for one line at a time. */
@Fact()
@Entity('pack_weigher')
@Index(['siteId', 'code'], { unique: true, where: '"voided_by" IS NULL' })
@Index(['deviceId'], { unique: true, where: '"voided_by" IS NULL' })
export class PackWeigher {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => Device)
  deviceId!: string;

  @RefColumn(() => PackingLine)
  lineId!: string;

  @WordColumn()
  code!: string;

  /** The step of its display. */
  @WholeColumn()
  stepMilligrams!: number;

  /** How far off a weighing may be, by its last verification or test; the mean of many is off by no more. */
  @WholeColumn()
  maximumPermissibleErrorMilligrams!: number;

  /** How many weighing or filling heads it tells apart; null: none. */
  @WholeColumn({ nullable: true })
  headCount!: number | null;

  /** Its sequence counts every pack of the line. */
  @FlagColumn()
  countsPacks!: boolean;

  /** It takes packs out by itself and marks them. */
  @FlagColumn()
  rejectsPacks!: boolean;

  @InstantColumn()
  setUpAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
