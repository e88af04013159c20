import { Entity } from 'typeorm';
import { IdColumn, WholeColumn } from '../platform/database/columns.js';

/** How many checks were recorded of a plan: the row that two people who record the same check wait for. Can be rebuilt. */
@Entity('check_plan_state')
export class CheckPlanState {
  @IdColumn()
  planId!: string;

  @WholeColumn()
  checkCount!: number;
}
