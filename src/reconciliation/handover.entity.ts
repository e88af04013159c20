import { Entity, Index } from 'typeorm';
import {
  DayColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackingLine } from '../plant/packing-line.entity.js';
import { Site } from '../plant/site.entity.js';

/** A lead hands a line over at the end of a shift, with six points as they stood when it was signed. */
@Fact()
@Entity('handover')
@Index(['lineId', 'fromAt'], { unique: true, where: '"voided_by" IS NULL' })
export class Handover {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => PackingLine)
  lineId!: string;

  @DayColumn()
  productionOn!: string;

  @WordColumn()
  shiftCode!: string;

  /** The shift's start and end. */
  @InstantColumn()
  fromAt!: string;

  @InstantColumn()
  untilAt!: string;

  /** Canonical text: the six points in figures. */
  @TextColumn()
  points!: string;

  /** The outgoing lead's own words. */
  @TextColumn({ nullable: true })
  notes!: string | null;

  @WordColumn()
  outgoingPersonId!: string;

  @InstantColumn()
  signedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
