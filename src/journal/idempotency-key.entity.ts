import { Entity, PrimaryColumn } from 'typeorm';
import { InstantColumn, TextColumn, WordColumn } from '../platform/database/columns.js';

/** A key that an accepted change used up, with the answer it got. */
@Entity('idempotency_key')
export class IdempotencyKey {
  /** The device, or the person where no device is known. */
  @PrimaryColumn({ type: 'varchar' })
  holder!: string;

  @PrimaryColumn({ type: 'varchar' })
  route!: string;

  @PrimaryColumn({ type: 'varchar' })
  key!: string;

  @WordColumn()
  contentHash!: string;

  /** The answer as JSON. */
  @TextColumn()
  answer!: string;

  @InstantColumn()
  usedAt!: string;
}
