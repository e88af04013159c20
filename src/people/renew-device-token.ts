import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { sha256 } from '../platform/canonical-text.js';
import { findDevice, replaceToken, type DeviceWithToken } from './device-in-unit.js';
import { newToken } from './secrets.js';

/** A device gets a new token, since it lost the old one or somebody may know it. The old one is worth nothing now. */
@Injectable()
export class RenewDeviceToken {
  constructor(private readonly changes: RecordChange) {}

  async execute(asked: Asked, deviceId: string): Promise<DeviceWithToken> {
    const token = newToken();
    const shown: { token: string | null } = { token: null };
    const answer = await this.changes.run(asked, { deviceId }, async (tx, change) => {
      const device = await findDevice(tx, asked.actor.siteId, deviceId);
      await replaceToken(tx, { deviceId, tokenHash: sha256(token), setAt: change.recordedAt });
      shown.token = token;
      return {
        answer: { id: device.id, code: device.code },
        entry: { action: 'renew-device-token', subject: { kind: 'device', id: deviceId } },
      };
    });
    return { ...answer, ...shown };
  }
}
