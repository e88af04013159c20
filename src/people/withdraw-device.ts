import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Refusal } from '../platform/refusal.js';
import { findDevice, removeToken } from './device-in-unit.js';

/**
 * A device is lost or gone: its token goes, and the sessions on it end. The device stays in the records.
 * Refusals: `device-not-known-any-more`.
 */
@Injectable()
export class WithdrawDevice {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, deviceId: string): Promise<{ id: string }> {
    return this.changes.run(asked, { deviceId }, async (tx, change) => {
      const device = await findDevice(tx, asked.actor.siteId, deviceId);
      const hadToken = await removeToken(tx, deviceId, change.recordedAt);
      if (!hadToken) throw new Refusal('device-not-known-any-more', { code: device.code });
      return {
        answer: { id: deviceId },
        entry: { action: 'withdraw-device', subject: { kind: 'device', id: deviceId } },
      };
    });
  }
}
