import { Entity } from 'typeorm';
import { IdColumn, WordColumn } from '../platform/database/columns.js';

/** Who complained and where the answer goes: not a fact, removed when it is not needed any more. */
@Entity('complaint_contact')
export class ComplaintContact {
  @IdColumn()
  complaintId!: string;

  @WordColumn()
  name!: string;

  /** A telephone number, an e-mail or a postal address. */
  @WordColumn({ nullable: true })
  reach!: string | null;
}
