import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { normaliseCode } from '../core/identifiers/normalise-code.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { packsIn } from '../packing/run-ranges.js';
import type { PalletAnswer } from './add-pallet.js';
import type { LotShare } from './lay-packs.js';
import { contentsOf, findPallet } from './pallet-list.js';
import type { ContentRow, PalletRow } from './pallet-rows.js';
import type { LotShareForm, PalletPartForm, SplitPalletForm } from './pallet.form.js';
import { replacementEntry, replacePallets } from './replace-pallets.js';

export interface SplitAnswer {
  readonly pallets: readonly PalletAnswer[];
}

/**
 * A pallet becomes several, each with its own SSCC. Its packs are shared out by number per lot; which pack went where is
 * not known, and no answer about the new pallets pretends so.
 * Refusals: `pallet-not-in-store`, `parts-not-the-whole`, `lot-not-on-pallet`, `which-lot`, `before-it-was-built`.
 */
@Injectable()
export class SplitPallet {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, pallet: string, form: SplitPalletForm): Promise<SplitAnswer> {
    return this.changes.run(asked, { pallet, ...form }, async (tx, change) => {
      const parent = await findPallet(tx, asked.actor.siteId, pallet);
      const { occurredAt } = settleOccurredAt(form.splitAt ?? null, change.recordedAt, form.reason);
      const children = await sharedOut(tx, parent, form.parts);
      const replacement = {
        asked,
        change,
        nextId: () => this.ids.next(),
        how: 'split',
        parents: [parent],
        children,
        happenedAt: occurredAt,
        reason: form.reason,
        label: form.label ?? true,
      } as const;
      const pallets = await replacePallets(tx, replacement);
      return { answer: { pallets }, entry: replacementEntry(replacement, 'split-pallet', pallets) };
    });
  }
}

/** The parent's packs in order, part by part, each lot on its own. */
async function sharedOut(tx: Tx, parent: PalletRow, parts: readonly PalletPartForm[]) {
  const contents = await contentsOf(tx, [parent.id]);
  const left = new Map<string, ContentRow[]>();
  for (const row of contents) left.set(row.lotId, [...(left.get(row.lotId) ?? []), row]);
  const children = parts.map((part) => ({
    placeId: part.placeId ?? parent.placeId,
    shares: part.shares.flatMap((share) => taken(left, parent, share)),
  }));
  const over = packsIn([...left.values()].flat());
  if (over > 0)
    throw new Refusal('parts-not-the-whole', { pallet: parent.sscc, packCount: parent.packCount, left: over });
  return children;
}

function taken(left: Map<string, ContentRow[]>, parent: PalletRow, share: LotShareForm): readonly LotShare[] {
  const lotId = lotOfShare(left, parent, share.lot ?? null);
  const shares: LotShare[] = [];
  let wanted = share.packCount;
  const rest = (left.get(lotId) ?? []).flatMap((row) => {
    const count = Math.min(wanted, row.toCount - row.fromCount);
    wanted -= count;
    const cut = row.fromCount + count;
    if (count > 0) shares.push({ runId: row.runId, lotId, fromCount: row.fromCount, toCount: cut });
    return cut < row.toCount ? [{ ...row, fromCount: cut }] : [];
  });
  if (wanted > 0) {
    throw new Refusal('parts-not-the-whole', { pallet: parent.sscc, packCount: parent.packCount, left: -wanted });
  }
  left.set(lotId, rest);
  return shares;
}

function lotOfShare(left: ReadonlyMap<string, readonly ContentRow[]>, parent: PalletRow, code: string | null): string {
  if (code === null) {
    const [only, ...others] = left.keys();
    if (only === undefined || others.length > 0) throw new Refusal('which-lot', { pallet: parent.sscc });
    return only;
  }
  const codes = [...left].find(([, rows]) => rows.some((row) => normaliseCode(row.lotCode) === normaliseCode(code)));
  if (codes === undefined) throw new Refusal('lot-not-on-pallet', { pallet: parent.sscc, lot: code });
  return codes[0];
}
