import { Entity, Index } from 'typeorm';
import {
  BigWholeColumn,
  BytesColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { PackingRun } from '../packing/packing-run.entity.js';
import { PackWeigher } from './pack-weigher.entity.js';

/**
 * Weights of one run as they were accepted, by ascending sequence. No fact: the row may go once its weights are sealed
 * elsewhere. What lasts is the journal's entry, with the digest of these bytes, the count and the range.
 */
@Entity('weight_batch')
@Index(['weigherId', 'series', 'firstSequence'])
@Index(['runId'])
export class WeightBatch {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackWeigher)
  weigherId!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  /** Names the weigher's counter: another one where it began again. */
  @WordColumn()
  series!: string;

  @BigWholeColumn()
  firstSequence!: number;

  @BigWholeColumn()
  lastSequence!: number;

  @WholeColumn()
  weightCount!: number;

  /** The earliest time of a weight in it, which need not be that of the first sequence. */
  @InstantColumn()
  firstAt!: string;

  @InstantColumn()
  lastAt!: string;

  /** Encoded columns (core/weight-blocks). */
  @BytesColumn()
  weights!: Buffer;

  /** SHA-256 of `weights`, as the journal's entry holds it. */
  @WordColumn()
  digest!: string;

  /** The journal's entry that accepted it. */
  @WordColumn()
  entryId!: string;

  @InstantColumn()
  receivedAt!: string;
}
