import { Entity, Unique } from 'typeorm';
import { IdColumn, WordColumn } from '../platform/database/columns.js';

/**
 * A point that is open now, once a cause and subject: it closes the race of two rules that raise the same. Not a fact:
 * what it says can be rebuilt from the points and their ends.
 */
@Entity('open_point_state')
@Unique(['siteId', 'cause', 'subjectKind', 'subjectId'])
export class OpenPointState {
  @IdColumn()
  pointId!: string;

  @WordColumn()
  siteId!: string;

  @WordColumn()
  cause!: string;

  @WordColumn()
  subjectKind!: string;

  @WordColumn()
  subjectId!: string;
}
