import type { Instant } from '../platform/clock.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { Device } from './device.entity.js';
import { DeviceToken } from './device-token.entity.js';
import { endSessions } from './end-sessions.js';

/** The token of a device; null where the same request had been answered before: it is shown once. */
export interface DeviceWithToken {
  readonly id: string;
  readonly code: string;
  readonly token: string | null;
}

/** @throws {Refusal} `device-code-taken` */
export async function insertDevice(tx: Tx, device: Device): Promise<void> {
  const { siteId, code } = device;
  if ((await tx.findOne(Device, { siteId, code })) !== null) throw new Refusal('device-code-taken', { code });
  try {
    await tx.insert(Device, device);
  } catch (error) {
    throw isTakenKey(error) ? new Refusal('device-code-taken', { code }) : error;
  }
}

/** @throws {NotFound} for a device of another site, too */
export async function findDevice(tx: Tx, siteId: string, deviceId: string): Promise<Device> {
  const device = await tx.findOne(Device, { id: deviceId, siteId });
  if (device === null) throw new NotFound('device', deviceId);
  return device;
}

/** Puts a token in the place of the one before. The sessions on the device end with the old one. */
export async function replaceToken(tx: Tx, token: DeviceToken): Promise<void> {
  await tx.sql`
    INSERT INTO "device_token" ("device_id", "token_hash", "set_at")
    VALUES (${token.deviceId}, ${token.tokenHash}, ${token.setAt})
    ON CONFLICT ("device_id") DO UPDATE SET "token_hash" = excluded."token_hash", "set_at" = excluded."set_at"`;
  await endSessions(tx, { deviceId: token.deviceId }, token.setAt);
}

/** Takes a device's token away. Answers whether there was one. */
export async function removeToken(tx: Tx, deviceId: string, at: Instant): Promise<boolean> {
  const removed = await tx.remove(DeviceToken, { deviceId });
  await endSessions(tx, { deviceId }, at);
  return removed > 0;
}
