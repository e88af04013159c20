import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { HopperPeriod } from './hopper-period.entity.js';

/** Opened and looked in, flow stopped, how, the residue, a second person: the hopper period ends. */
@Fact()
@Entity('proven_empty')
@Index(['periodId'], { unique: true, where: '"voided_by" IS NULL' })
export class ProvenEmpty {
  @IdColumn()
  id!: string;

  @RefColumn(() => HopperPeriod)
  periodId!: string;

  @WordColumn()
  how!: string;

  @WholeColumn()
  residueGrams!: number;

  @WholeColumn()
  residueUpperGrams!: number;

  @WordColumn()
  secondPersonId!: string;

  @InstantColumn()
  provenAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
