import { Entity, Unique } from 'typeorm';
import { IdColumn, InstantColumn, WordColumn } from '../platform/database/columns.js';

/** The last point of a cause that a banner showed to a person, and when that last counted as an interruption. */
@Entity('banner_seen')
@Unique(['personId', 'cause'])
export class BannerSeen {
  @IdColumn()
  id!: string;

  @WordColumn()
  personId!: string;

  @WordColumn()
  cause!: string;

  @WordColumn()
  lastPointId!: string;

  @InstantColumn()
  countedAt!: string;
}
