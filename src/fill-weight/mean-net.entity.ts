import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackingRun } from '../packing/packing-run.entity.js';
import { Scale } from '../plant/scale.entity.js';

/** The mean net of a run's packs from a hand sample, with hard limits. */
@Fact()
@Entity('mean_net')
@Index(['runId'])
export class MeanNet {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  @RefColumn(() => Scale, { nullable: true })
  scaleId!: string | null;

  @WholeColumn()
  samplePackCount!: number;

  @WholeColumn()
  meanMilligrams!: number;

  @WholeColumn()
  lowerMilligrams!: number;

  @WholeColumn()
  upperMilligrams!: number;

  /** Canonical text: the net of each pack of the sample. */
  @TextColumn()
  netDecigrams!: string;

  @InstantColumn()
  weighedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
