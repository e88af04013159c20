import { Entity, Unique } from 'typeorm';
import { IdColumn, InstantColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';

/** How often a person was interrupted in an hour, and by what. Not a fact: a measure of the house, kept for a year. */
@Entity('interruption_count')
@Unique(['personId', 'hourStartsAt', 'cause'])
export class InterruptionCount {
  @IdColumn()
  id!: string;

  @WordColumn()
  siteId!: string;

  @WordColumn()
  personId!: string;

  @InstantColumn()
  hourStartsAt!: string;

  @WordColumn()
  cause!: string;

  /** Banners that were shown for the first time. */
  @WholeColumn()
  shownCount!: number;

  /** Points of the same cause within ten minutes: they raised a number on the banner and interrupted nobody. */
  @WholeColumn()
  repeatCount!: number;
}
