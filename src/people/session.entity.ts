import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, WordColumn } from '../platform/database/columns.js';

/** Somebody signed in at some place. */
@Entity('session')
@Index(['personId'])
export class Session {
  /** SHA-256 of the cookie. */
  @IdColumn()
  tokenHash!: string;

  @WordColumn()
  siteId!: string;

  @WordColumn()
  personId!: string;

  @WordColumn({ nullable: true })
  deviceId!: string | null;

  @WordColumn()
  csrfSecret!: string;

  /** How the person proved who they are. */
  @WordColumn()
  proof!: 'password' | 'badge' | 'pin';

  @InstantColumn()
  startedAt!: string;

  @InstantColumn()
  endsAt!: string;
}
