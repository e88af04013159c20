import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { findDevice } from '../people/device-in-unit.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { insertPackWeigher } from './insert-pack-weigher.js';
import { PackWeigher } from './pack-weigher.entity.js';
import type { AddPackWeigherForm } from './pack-weigher.form.js';

/**
 * A machine that weighs the packs of a line is set up: from then on its token may send weights.
 * Refusals: `device-is-no-machine`, `machine-weighs-already`, `code-taken`.
 */
@Injectable()
export class AddPackWeigher {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddPackWeigherForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const device = await findDevice(tx, siteId, form.deviceId);
      if (device.kind !== 'machine') throw new Refusal('device-is-no-machine', { device: device.code });
      const earlier = await tx.findOne(PackWeigher, { deviceId: device.id, voidedBy: null });
      if (earlier !== null) {
        throw new Refusal('machine-weighs-already', { device: device.code, weigher: earlier.code });
      }
      const entry = await insertPackWeigher(tx, { asked, change, ids: this.ids }, form);
      return { answer: { id: entry.subject.id }, entry };
    });
  }
}
