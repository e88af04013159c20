import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { sha256 } from '../platform/canonical-text.js';
import { Ids } from '../platform/ids.js';
import type { EnrolDeviceForm } from './device.form.js';
import { insertDevice, replaceToken, type DeviceWithToken } from './device-in-unit.js';
import { newToken } from './secrets.js';

/**
 * A tablet, handheld or desk computer is made known to the house: people sign in on it by its cookie.
 * Refusals: `device-code-taken`.
 */
@Injectable()
export class EnrolDevice {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  async execute(asked: Asked, form: EnrolDeviceForm): Promise<DeviceWithToken> {
    const token = newToken();
    const shown: { token: string | null } = { token: null };
    const answer = await this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const device = { id: this.ids.next(), siteId, code: form.code.toLowerCase(), kind: form.kind } as const;
      await insertDevice(tx, device);
      await replaceToken(tx, { deviceId: device.id, tokenHash: sha256(token), setAt: change.recordedAt });
      shown.token = token;
      const after = { code: device.code, kind: device.kind };
      return {
        answer: { id: device.id, code: device.code },
        entry: { action: 'enrol-device', subject: { kind: 'device', id: device.id }, after },
      };
    });
    // Added outside, so that the stored answer of the request holds no secret.
    return { ...answer, ...shown };
  }
}
