import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Person } from './person.entity.js';

/** A person holds a role. It ends by being voided. */
@Fact()
@Entity('role_holding')
@Index(['personId', 'role'], { unique: true, where: '"voided_by" IS NULL' })
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
