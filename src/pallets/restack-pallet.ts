import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import type { PalletAnswer } from './add-pallet.js';
import { contentsOf, findPallet } from './pallet-list.js';
import type { ReplacePalletForm } from './pallet.form.js';
import { replacementEntry, replacePallets } from './replace-pallets.js';

/** All packs go onto another pallet, or the pallet gets another label because its own can't be read. */
export type ReplaceHow = 'restacked' | 'relabelled';

/**
 * A pallet goes on as another, with a new SSCC and the same packs: restacked, or relabelled.
 * Refusals: `pallet-not-in-store`, `before-it-was-built`.
 */
@Injectable()
export class RestackPallet {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, pallet: string, how: ReplaceHow, form: ReplacePalletForm): Promise<PalletAnswer> {
    return this.changes.run(asked, { pallet, how, ...form }, async (tx, change) => {
      const parent = await findPallet(tx, asked.actor.siteId, pallet);
      const { occurredAt } = settleOccurredAt(form.happenedAt ?? null, change.recordedAt, form.reason);
      const contents = await contentsOf(tx, [parent.id]);
      const shares = contents.map(({ runId, lotId, fromCount, toCount }) => ({ runId, lotId, fromCount, toCount }));
      const replacement = {
        asked,
        change,
        nextId: () => this.ids.next(),
        how,
        parents: [parent],
        children: [{ shares, placeId: form.placeId ?? parent.placeId }],
        happenedAt: occurredAt,
        reason: form.reason,
        label: true,
      };
      const made = await replacePallets(tx, replacement);
      const [answer] = made;
      if (answer === undefined) throw new RangeError('a replacement that made nothing');
      const action = how === 'restacked' ? 'restack-pallet' : 'relabel-pallet';
      return { answer, entry: replacementEntry(replacement, action, made) };
    });
  }
}
