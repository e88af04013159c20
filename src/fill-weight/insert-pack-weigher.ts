import type { Asked, Change } from '../journal/entry-draft.js';
import { insertCoded } from '../plant/insert-coded.js';
import { ofSite } from '../plant/of-site.js';
import { lineOf } from '../plant/plant-facts.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import type { Ids } from '../platform/ids.js';
import { leaveSealJob } from './kept/seal-job.js';
import { leaveLookAtWeighing } from './look-job.js';
import { PackWeigher } from './pack-weigher.entity.js';
import type { AddPackWeigherForm } from './pack-weigher.form.js';

/** Sets a machine up as the pack weigher of a line; answers what the journal holds of it. Refusals: `code-taken`. */
export async function insertPackWeigher(
  tx: Tx,
  { asked, change, ids }: { readonly asked: Asked; readonly change: Change; readonly ids: Ids },
  form: AddPackWeigherForm,
) {
  const line = ofSite(asked.actor, 'packing-line', await lineOf(tx, form.lineId));
  const id = ids.next();
  const row = { ...form, headCount: form.headCount ?? null };
  const { siteId } = asked.actor;
  await insertCoded(tx, PackWeigher, { id, siteId, ...row, setUpAt: change.recordedAt, voidedBy: null });
  await leaveSealJob(tx, { id: ids.next(), at: change.recordedAt });
  await leaveLookAtWeighing(tx, { id: ids.next(), at: change.recordedAt });
  return {
    action: 'add-pack-weigher',
    subject: { kind: 'pack-weigher', id },
    touches: [
      { kind: 'packing-line', id: line.id },
      { kind: 'device', id: form.deviceId },
    ],
    after: { ...row },
  } as const;
}
