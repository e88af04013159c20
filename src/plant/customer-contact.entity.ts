import { Entity } from 'typeorm';
import { IdColumn, TextColumn, WordColumn } from '../platform/database/columns.js';

/** Name, address and telephone of a customer: not a fact, removed when retention ends. */
@Entity('customer_contact')
export class CustomerContact {
  @IdColumn()
  customerId!: string;

  @WordColumn()
  name!: string;

  @TextColumn()
  address!: string;

  @WordColumn({ nullable: true })
  telephone!: string | null;
}
