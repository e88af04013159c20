import { Entity } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Person } from './person.entity.js';

/** A person holds a role. It ends by being voided. */
@Fact()
@Entity('role_holding')
export class RoleHolding {
  @IdColumn()
  id!: string;

  @RefColumn(() => Person)
  personId!: string;

  @WordColumn()
  role!: string;

  @InstantColumn()
  heldFrom!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
