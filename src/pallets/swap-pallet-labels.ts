import { Injectable } from '@nestjs/common';
import { leaveReachJob } from '../open-points/reach-job.js';
import { openHolds } from '../disposition/standings.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { raisePoint } from '../open-points/raise-point.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { PalletContent } from './pallet-content.entity.js';
import type { SwapPalletLabelsForm } from './pallet-label.form.js';
import { descentsOf } from './pallet-list.js';
import type { PalletRow } from './pallet-rows.js';
import { palletOfLabel } from './scanned-sscc.js';

export interface SwapAnswer {
  readonly one: string;
  readonly other: string;
  /** Either is on a vehicle or has left: dispatch was told. */
  readonly isLoaded: boolean;
}

/**
 * Two labels stick on each other's pallet. The labels stay where they are; what is recorded to stand under each is
 * exchanged as incorrect data. What was recorded before stays readable, void.
 * Refusals: `same-pallet-twice`, `pallet-taken-apart`, `swap-of-other-formats`, `pallet-has-history`.
 */
@Injectable()
export class SwapPalletLabels {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SwapPalletLabelsForm): Promise<SwapAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const currentYear = Number(change.recordedAt.slice(0, 4));
      const one = await palletOfLabel(tx, siteId, { text: form.one, currentYear });
      const other = await palletOfLabel(tx, siteId, { text: form.other, currentYear });
      await refuseUnfit(tx, one, other);
      const [ofOne, ofOther] = [await goodContents(tx, one.id), await goodContents(tx, other.id)];
      await this.exchange(tx, change, { from: ofOne, to: other.id });
      await this.exchange(tx, change, { from: ofOther, to: one.id });
      const loaded = [one, other].filter(({ status }) => status === 'loaded' || status === 'dispatched');
      for (const pallet of loaded) await this.tellDispatch(tx, change, pallet, pallet.id === one.id ? other : one);
      await this.tellQuality(tx, change, [one, other]);
      await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      return {
        answer: { one: one.sscc, other: other.sscc, isLoaded: loaded.length > 0 },
        entry: {
          action: 'swap-pallet-labels',
          subject: { kind: 'pallet', id: one.id },
          touches: [{ kind: 'pallet', id: other.id }],
          before: { [one.sscc]: plain(ofOne), [other.sscc]: plain(ofOther) },
          after: { [one.sscc]: plain(ofOther), [other.sscc]: plain(ofOne), why: 'incorrect-data' },
          reason: form.reason,
        },
      };
    });
  }

  private async exchange(
    tx: Tx,
    change: Change,
    { from, to }: { readonly from: readonly PalletContent[]; readonly to: string },
  ): Promise<void> {
    for (const row of from) {
      await voidFact(tx, PalletContent, row.id, change);
      const { runId, lotId, fromCount, toCount } = row;
      await tx.insert(PalletContent, { id: this.ids.next(), palletId: to, runId, lotId, fromCount, toCount });
    }
  }

  private async tellDispatch(tx: Tx, change: Change, pallet: PalletRow, other: PalletRow): Promise<void> {
    await raisePoint(tx, {
      id: this.ids.next(),
      siteId: pallet.siteId,
      cause: 'labels-swapped-loaded',
      facts: { pallet: pallet.sscc, other: other.sscc },
      subject: { kind: 'pallet', id: pallet.id },
      role: 'dispatch-clerk',
      at: change.recordedAt,
    });
  }

  /** A hold on a pallet was meant for what stood on it, and its label is elsewhere. */
  private async tellQuality(tx: Tx, change: Change, pallets: readonly PalletRow[]): Promise<void> {
    const holds = await openHolds(
      tx,
      pallets.map(({ id }) => ({ kind: 'pallet' as const, id })),
    );
    for (const pallet of pallets.filter(({ id }) => holds.some(({ scopeId }) => scopeId === id))) {
      await raisePoint(tx, {
        id: this.ids.next(),
        siteId: pallet.siteId,
        cause: 'labels-swapped-held',
        facts: { pallet: pallet.sscc },
        subject: { kind: 'pallet', id: pallet.id },
        role: 'quality-officer',
        at: change.recordedAt,
      });
    }
  }
}

async function refuseUnfit(tx: Tx, one: PalletRow, other: PalletRow): Promise<void> {
  if (one.id === other.id) throw new Refusal('same-pallet-twice', { pallet: one.sscc });
  for (const pallet of [one, other]) {
    if (pallet.status === 'taken-apart') throw new Refusal('pallet-taken-apart', { pallet: pallet.sscc });
    if ((await descentsOf(tx, pallet.id)).length > 0) throw new Refusal('pallet-has-history', { pallet: pallet.sscc });
  }
  if (one.formatId === other.formatId) return;
  throw new Refusal('swap-of-other-formats', {
    ...{ one: one.sscc, other: other.sscc, oneFormat: one.formatCode, otherFormat: other.formatCode },
  });
}

function goodContents(tx: Tx, palletId: string): Promise<PalletContent[]> {
  return tx.find(PalletContent, { palletId, voidedBy: null });
}

function plain(rows: readonly PalletContent[]) {
  return rows.map(({ runId, lotId, fromCount, toCount }) => ({ runId, lotId, fromCount, toCount }));
}
