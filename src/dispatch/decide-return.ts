import { Injectable } from '@nestjs/common';
import { changeBagState } from '../drying/change-bag-state.js';
import { bagOf } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { clearPoints } from '../open-points/raise-point.js';
import { changePalletState } from '../pallets/change-pallet-state.js';
import { standingOfPallet } from '../pallets/pallet-standing.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import type { DecideReturnForm } from './return.form.js';
import { ReturnDecision } from './return-decision.entity.js';
import { returnedUnitOf, returnedUnitsOf, type ReturnedUnitRow } from './returns.js';
import { takeDelivery } from './take-delivery.js';
import { refuseUnfit, standingsOfBags } from './unit-standing.js';

/**
 * Quality decides about a unit that came back: into the stock again, or destroyed. It is never rework.
 * Refusals: `return-decided`, `loose-packs-stay-out`, `unit-waits`, `unit-on-hold`, `unit-rejected`; not found:
 * returned-unit.
 */
@Injectable()
export class DecideReturn {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, unitId: string, form: DecideReturnForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { unitId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const found = await returnedUnitOf(tx, siteId, unitId);
      await takeDelivery(tx, siteId, found.deliveryId);
      const unit = await returnedUnitOf(tx, siteId, unitId);
      if (unit.fate !== null) throw new Refusal('return-decided', { unit: unit.name });
      const { fate, reason } = form;
      if (fate === 'restock') await refuseRestock(tx, unit);
      const decidedAt = change.recordedAt;
      await settle(tx, unit, { fate, at: decidedAt });
      const id = this.ids.next();
      await tx.insert(ReturnDecision, { id, unitId: unit.id, fate, reason, decidedAt, voidedBy: null });
      const subject = { kind: 'delivery', id: unit.deliveryId };
      if ((await returnedUnitsOf(tx, unit.deliveryId)).every((row) => row.fate !== null)) {
        const nextId = (): string => this.ids.next();
        await clearPoints(tx, { nextId, siteId, cause: 'return-waits', subject, personId, at: decidedAt });
      }
      return {
        answer: { id },
        entry: {
          action: 'decide-return',
          subject,
          touches: [touched(unit)],
          after: { id, unitId: unit.id, fate },
          reason,
        },
      };
    });
  }
}

function touched({ palletId, bagId, lotId }: ReturnedUnitRow): { kind: string; id: string } {
  if (palletId !== null) return { kind: 'pallet', id: palletId };
  return bagId !== null ? { kind: 'bulk-bag', id: bagId } : { kind: 'lot', id: lotId ?? '' };
}

/** Only what quality would let go today goes back; of loose packs nobody knows who had them in hand. */
async function refuseRestock(tx: Tx, { palletId, bagId, name }: ReturnedUnitRow): Promise<void> {
  if (palletId !== null) refuseUnfit(name, await standingOfPallet(tx, palletId));
  else if (bagId === null) throw new Refusal('loose-packs-stay-out', { lot: name });
  else {
    const standing = (await standingsOfBags(tx, [await bagOf(tx, bagId)])).get(bagId);
    if (standing !== undefined) refuseUnfit(name, standing);
  }
}

async function settle(
  tx: Tx,
  unit: ReturnedUnitRow,
  { fate, at }: { readonly fate: 'restock' | 'destroy'; readonly at: string },
): Promise<void> {
  const { palletId, bagId, placeId } = unit;
  const isRestocked = fate === 'restock';
  if (palletId !== null) {
    const to = { status: isRestocked ? 'in-store' : 'destroyed', placeId, at } as const;
    const isDone = await changePalletState(tx, palletId, { status: ['returned'] }, to);
    if (!isDone) throw new Refusal('return-decided', { unit: unit.name });
  }
  if (bagId !== null) {
    const { remainingGrams } = await bagOf(tx, bagId);
    const to = isRestocked
      ? ({ status: 'full', remainingGrams } as const)
      : ({ status: 'destroyed', remainingGrams: 0 } as const);
    const isDone = await changeBagState(tx, bagId, { status: ['returned'] }, { ...to, placeId, at });
    if (!isDone) throw new Refusal('return-decided', { unit: unit.name });
  }
}
