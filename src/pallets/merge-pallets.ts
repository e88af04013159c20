import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { formatOf } from '../plant/plant-facts.js';
import type { PalletAnswer } from './add-pallet.js';
import { contentsOf, findPallet } from './pallet-list.js';
import type { PalletRow } from './pallet-rows.js';
import type { MergePalletsForm } from './pallet.form.js';
import { replacementEntry, replacePallets } from './replace-pallets.js';

/**
 * Several pallets of one format become one, with a new SSCC.
 * Refusals: `mixed-formats`, `pallet-over-full`, `same-pallet-twice`, `pallet-not-in-store`, `before-it-was-built`.
 */
@Injectable()
export class MergePallets {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: MergePalletsForm): Promise<PalletAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { occurredAt } = settleOccurredAt(form.happenedAt ?? null, change.recordedAt, form.reason);
      const parents: PalletRow[] = [];
      for (const { pallet } of form.pallets) parents.push(await findPallet(tx, asked.actor.siteId, pallet));
      await refuseOddParents(tx, parents);
      const contents = await contentsOf(
        tx,
        parents.map(({ id }) => id),
      );
      const shares = contents.map(({ runId, lotId, fromCount, toCount }) => ({ runId, lotId, fromCount, toCount }));
      const replacement = {
        asked,
        change,
        nextId: () => this.ids.next(),
        how: 'merged',
        parents,
        children: [{ shares, placeId: form.placeId ?? null }],
        happenedAt: occurredAt,
        reason: form.reason,
        label: true,
      } as const;
      const made = await replacePallets(tx, replacement);
      const [pallet] = made;
      if (pallet === undefined) throw new RangeError('a merge that made nothing');
      return { answer: pallet, entry: replacementEntry(replacement, 'merge-pallets', made) };
    });
  }
}

async function refuseOddParents(tx: Tx, parents: readonly PalletRow[]): Promise<void> {
  const twice = parents.find((pallet, place) => parents.findIndex((one) => one.id === pallet.id) !== place);
  if (twice !== undefined) throw new Refusal('same-pallet-twice', { pallet: twice.sscc });
  const [first] = parents;
  if (first === undefined) throw new RangeError('a merge of no pallet');
  const codes = [...new Set(parents.map((pallet) => pallet.formatCode))];
  if (codes.length > 1) throw new Refusal('mixed-formats', { formats: codes.join(', ') });
  const format = await formatOf(tx, first.formatId);
  const packCount = parents.reduce((sum, pallet) => sum + pallet.packCount, 0);
  if (packCount > format.packsPerPallet) {
    throw new Refusal('pallet-over-full', { packCount, packsPerPallet: format.packsPerPallet, format: format.code });
  }
}
