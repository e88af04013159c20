import { Entity } from 'typeorm';
import { IdColumn, TextColumn } from '../platform/database/columns.js';

/**
 * All good counts of a closed run in one row (`run-course.ts`): a hopper period of days has thousands of counts, and a
 * question reads them every time. Can be rebuilt; an open run has none.
 */
@Entity('run_course')
export class RunCourse {
  @IdColumn()
  runId!: string;

  @TextColumn()
  course!: string;
}
