import { Entity } from 'typeorm';
import { IdColumn, WordColumn } from '../platform/database/columns.js';

/**
 * The period that a hopper is in; null before its first. Every command that adds to a hopper takes this row first, so
 * that nothing is tipped into a period that ends at the same moment. Can be rebuilt.
 */
@Entity('hopper_state')
export class HopperState {
  @IdColumn()
  hopperId!: string;

  @WordColumn({ nullable: true })
  periodId!: string | null;
}
