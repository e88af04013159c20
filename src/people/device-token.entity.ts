import { Entity, Unique } from 'typeorm';
import { IdColumn, InstantColumn, WordColumn } from '../platform/database/columns.js';

/** The hashed token of a device: an API token, or the cookie of an enrolled tablet. */
@Entity('device_token')
@Unique(['tokenHash'])
export class DeviceToken {
  @IdColumn()
  deviceId!: string;

  @WordColumn()
  tokenHash!: string;

  @InstantColumn()
  setAt!: string;
}
