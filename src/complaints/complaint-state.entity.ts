import { Entity, Index } from 'typeorm';
import { IdColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';
import type { ComplaintStatus } from './complaint-words.js';

/** How a complaint stands: follows from its steps and can be rebuilt. What changes it is guarded by the count. */
@Entity('complaint_state')
@Index(['siteId', 'status'])
export class ComplaintState {
  @IdColumn()
  complaintId!: string;

  @WordColumn()
  siteId!: string;

  @WordColumn()
  status!: ComplaintStatus;

  /** Grows with every change: of two that saw the same count, one finds it gone. */
  @WholeColumn()
  changeCount!: number;
}
