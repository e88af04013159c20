import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { insertDevice, replaceToken } from '../people/device-in-unit.js';
import { newToken } from '../people/secrets.js';
import { sha256 } from '../platform/canonical-text.js';
import { Ids } from '../platform/ids.js';
import { insertPackWeigher } from './insert-pack-weigher.js';
import type { InstallPackWeigherForm } from './pack-weigher.form.js';

/** A weigher that was set up together with its machine; the token is null where the request had been answered before. */
interface WeigherWithToken {
  readonly id: string;
  readonly token: string | null;
}

/**
 * A new machine and the pack weigher that it is, in one: its token is shown once.
 * Refusals: `device-code-taken`, `code-taken`.
 */
@Injectable()
export class InstallPackWeigher {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  async execute(asked: Asked, form: InstallPackWeigherForm): Promise<WeigherWithToken> {
    const token = newToken();
    const shown: { token: string | null } = { token: null };
    const answer = await this.changes.run(asked, form, async (tx, change) => {
      const { machineCode, ...weigher } = form;
      const { siteId } = asked.actor;
      const device = { id: this.ids.next(), siteId, code: machineCode.toLowerCase(), kind: 'machine' } as const;
      await insertDevice(tx, device);
      await replaceToken(tx, { deviceId: device.id, tokenHash: sha256(token), setAt: change.recordedAt });
      const entry = await insertPackWeigher(tx, { asked, change, ids: this.ids }, { ...weigher, deviceId: device.id });
      shown.token = token;
      return { answer: { id: entry.subject.id }, entry: { ...entry, after: { ...entry.after, device: device.code } } };
    });
    // Added outside, so that the stored answer of the request holds no secret.
    return { ...answer, ...shown };
  }
}
