import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, WordColumn } from '../platform/database/columns.js';

/**
 * What lets a shared device send, later, what its person entered while the network was away: nothing else can be done
 * with it. Not a fact: a credential.
 */
@Entity('queue_proof')
@Index(['personId'])
@Index(['sessionHash'])
export class QueueProof {
  /** SHA-256 of the token. */
  @IdColumn()
  tokenHash!: string;

  @WordColumn()
  siteId!: string;

  @WordColumn()
  personId!: string;

  @WordColumn()
  deviceId!: string;

  /** The session that it was issued in. */
  @WordColumn()
  sessionHash!: string;

  @InstantColumn()
  issuedAt!: string;

  /** From then on it proves nothing. */
  @InstantColumn()
  endsAt!: string;

  /** From then on nothing that happens is this person's: signed out, or the session was over at the latest. */
  @InstantColumn()
  signedOutAt!: string;
}
