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
import { Coder } from '../plant/coder.entity.js';
import { Lot } from './lot.entity.js';
import { PackingRun } from './packing-run.entity.js';

/** From this pack on the coder prints this code: the lot of the packs that follow. */
@Fact()
@Entity('coder_change')
@Index(['runId', 'firstPack'])
@Index(['lotId'])
export class CoderChange {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  @RefColumn(() => Coder)
  coderId!: string;

  @RefColumn(() => Lot)
  lotId!: string;

  /** Cumulative count before the first pack with this code. */
  @WholeColumn()
  firstPack!: number;

  @InstantColumn()
  changedAt!: string;

  /** What the format's pattern asks for at that time. */
  @WordColumn()
  intendedCode!: string;

  @FlagColumn()
  isAsIntended!: boolean;

  @VoidedByColumn()
  voidedBy!: string | null;
}
