import { Entity, Index } from 'typeorm';
import {
  BigWholeColumn,
  IdColumn,
  RefColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../../platform/database/columns.js';
import { Fact } from '../../platform/database/fact-table.js';
import { PackingRun } from '../../packing/packing-run.entity.js';
import { PackWeigher } from '../pack-weigher.entity.js';

/** A tare that was found wrong later: so much is added to the net of some packs of a run. The weights stay as received. */
@Fact()
@Entity('tare_correction')
@Index(['runId'])
export class TareCorrection {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  @RefColumn(() => PackWeigher)
  weigherId!: string;

  /** Names the weigher's counter. */
  @WordColumn()
  series!: string;

  @BigWholeColumn()
  fromSequence!: number;

  /** The last one, included. */
  @BigWholeColumn()
  toSequence!: number;

  /** Below zero where packs were tared too lightly. */
  @WholeColumn()
  addedMilligrams!: number;

  @VoidedByColumn()
  voidedBy!: string | null;
}
