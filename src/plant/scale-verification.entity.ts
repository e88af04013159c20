import { Entity, Index } from 'typeorm';
import { DayColumn, IdColumn, RefColumn, VoidedByColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Scale } from './scale.entity.js';

/** A scale is verified for trade: goods may be sold by its weight from one day to another, both included. */
@Fact()
@Entity('scale_verification')
@Index(['scaleId', 'verifiedOn'], { unique: true, where: '"voided_by" IS NULL' })
export class ScaleVerification {
  @IdColumn()
  id!: string;

  @RefColumn(() => Scale)
  scaleId!: string;

  @DayColumn()
  verifiedOn!: string;

  @DayColumn()
  verifiedUntilOn!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
