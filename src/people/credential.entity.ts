import { Entity, Index } from 'typeorm';
import { FlagColumn, IdColumn, InstantColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Person } from './person.entity.js';

/** How a person proves to be that person: a password or PIN (argon2id), or a badge (SHA-256 of 128 random bits). */
@Entity('credential')
@Index(['personId', 'kind'], { unique: true })
@Index(['secretHash'])
export class Credential {
  @IdColumn()
  id!: string;

  @RefColumn(() => Person)
  personId!: string;

  @WordColumn()
  kind!: 'password' | 'pin' | 'badge';

  @WordColumn()
  secretHash!: string;

  /** A one-time password that must be changed at first use. */
  @FlagColumn()
  mustChange!: boolean;

  @InstantColumn()
  setAt!: string;
}
