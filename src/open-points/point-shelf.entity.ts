import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { OpenPoint } from './open-point.entity.js';

/** Somebody put a point's banner aside until a time. The point stays open and on its list. */
@Fact()
@Entity('point_shelf')
@Index(['pointId'])
export class PointShelf {
  @IdColumn()
  id!: string;

  @RefColumn(() => OpenPoint)
  pointId!: string;

  @InstantColumn()
  shelvedAt!: string;

  @InstantColumn()
  untilAt!: string;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @VoidedByColumn()
  voidedBy!: string | null;
}
