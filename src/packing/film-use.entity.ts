import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WholeColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { FilmLot } from './film-lot.entity.js';
import { PackingRun } from './packing-run.entity.js';

/** From this pack on a run uses this film lot. */
@Fact()
@Entity('film_use')
@Index(['runId', 'firstPack'])
@Index(['filmLotId'])
export class FilmUse {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackingRun)
  runId!: string;

  @RefColumn(() => FilmLot)
  filmLotId!: string;

  @WholeColumn()
  firstPack!: number;

  @InstantColumn()
  fittedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
