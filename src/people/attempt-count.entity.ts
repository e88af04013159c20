import { Entity } from 'typeorm';
import { IdColumn, InstantColumn, WholeColumn } from '../platform/database/columns.js';

/** How often somebody tried in vain within a window: by person, by device or by address. */
@Entity('attempt_count')
export class AttemptCount {
  @IdColumn()
  name!: string;

  @InstantColumn()
  windowStartedAt!: string;

  @WholeColumn()
  attempts!: number;
}
