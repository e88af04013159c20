import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import type { SetAsideForm } from './sscc-block.form.js';
import { setAside } from './sscc-blocks.js';

export interface SetAsideAnswer {
  readonly id: string;
  readonly ssccs: readonly string[];
}

/**
 * Pallet numbers are set aside for the device that asks, so that pallets get theirs while the network is away. They
 * come out of the site's one series and are given to nobody else.
 * Refusals: `block-needs-device`.
 */
@Injectable()
export class SetSsccsAside {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SetAsideForm): Promise<SetAsideAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId, deviceId } = asked.actor;
      if (deviceId === null) throw new Refusal('block-needs-device');
      const nextId = (): string => this.ids.next();
      const block = { nextId, siteId, deviceId, sheet: null, numberCount: form.numberCount, at: change.recordedAt };
      const { id, ssccs } = await setAside(tx, block);
      return {
        answer: { id, ssccs },
        entry: {
          action: 'set-ssccs-aside',
          subject: { kind: 'sscc-block', id },
          touches: [{ kind: 'device', id: deviceId }],
          after: { from: ssccs[0] ?? null, to: ssccs.at(-1) ?? null, numberCount: ssccs.length },
        },
      };
    });
  }
}
