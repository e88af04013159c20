import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { blindCountsOf } from './blind-counts.js';
import { loadedOn } from './deliveries.js';
import { DeliveryClose } from './delivery-close.entity.js';
import { DeliveryState } from './delivery-state.entity.js';
import type { DeliveryRow, LoadedRow } from './delivery-rows.js';
import { issueNote } from './issue-note.js';
import { progressOf } from './line-progress.js';
import type { CloseDeliveryForm } from './loading.form.js';
import type { ShortCode } from './short-reasons.js';
import { passedVehicle, takeOpenDelivery } from './take-delivery.js';
import { refuseUnfitUnits } from './units-on.js';

export interface CloseAnswer {
  readonly id: string;
  readonly noteNumber: string;
  readonly paperId: string;
}

/** Why less goes than was ordered; both null where nothing is short. */
interface ShortReason {
  readonly shortCode: ShortCode | null;
  readonly shortReason: string | null;
}

/**
 * Loading is done: the walk-round count agrees, every unit may still go, the note is numbered. The vehicle is still here.
 * Refusals: `delivery-is-closed`, `delivery-has-left`, `delivery-is-cancelled`, `vehicle-not-checked`,
 * `vehicle-failed-check`, `nothing-loaded`, `closed-before-loading`, `blind-count-missing`, `blind-count-differs`,
 * `blind-count-differs-again`, `short-reason-needed`, `short-words-needed`, `unit-waits`, `unit-on-hold`, `unit-rejected`,
 * `units-may-not-go`.
 */
@Injectable()
export class CloseDelivery {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: CloseDeliveryForm): Promise<CloseAnswer> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.closedAt ?? null, change.recordedAt, reason);
      const taken = await takeOpenDelivery(tx, siteId, delivery);
      const check = await passedVehicle(tx, taken);
      const loaded = await loadedOn(tx, taken.id);
      refuseEarly(taken, loaded, occurredAt);
      await refuseOddCount(tx, taken);
      const short = await shortReasonOf(tx, taken, form);
      await refuseUnfitUnits(tx, loaded, 'units-may-not-go');
      const { seal } = form;
      const remarks = form.remarks ?? null;
      const [closedAt, issuedAt] = [occurredAt, change.recordedAt];
      const draft = { delivery: taken, check, seal, ...short, remarks, closedAt, issuedAt, personId };
      const { paperId, number } = await issueNote(tx, { ...draft, nextId: () => this.ids.next() });
      const [id, deliveryId, blindCount] = [this.ids.next(), taken.id, loaded.length];
      const closed = { id, deliveryId, seal, ...short, remarks, blindCount, paperId, closedAt };
      await tx.insert(DeliveryClose, { ...closed, voidedBy: null });
      await tx.update(DeliveryState, { deliveryId: taken.id }, { status: 'closed' });
      return {
        answer: { id, noteNumber: number, paperId },
        entry: {
          action: 'close-delivery',
          subject: { kind: 'delivery', id: taken.id },
          touches: [...unitsTouched(loaded), { kind: 'paper', id: paperId }],
          after: { note: number, seal, blindCount, unitCount: loaded.length, shortCode: short.shortCode },
          reason: reason ?? short.shortReason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

/** The units of a delivery as the journal names them. */
export function unitsTouched(loaded: readonly LoadedRow[]): readonly { readonly kind: string; readonly id: string }[] {
  return loaded.map((row) =>
    row.palletId === null ? { kind: 'bulk-bag', id: row.bagId ?? '' } : { kind: 'pallet', id: row.palletId },
  );
}

function refuseEarly(delivery: DeliveryRow, loaded: readonly LoadedRow[], at: string): void {
  if (loaded.length === 0) throw new Refusal('nothing-loaded', { order: delivery.orderNumber });
  const last = loaded.reduce((latest, row) => (row.loadedAt > latest ? row.loadedAt : latest), '');
  if (at < last) throw new Refusal('closed-before-loading', { order: delivery.orderNumber, lastAt: last });
}

/** The count is blind: the first refusal does not tell what it should have been. */
async function refuseOddCount(from: ReadFrom, { id, orderNumber, loadedCount }: DeliveryRow): Promise<void> {
  const { last, agrees, difference } = await blindCountsOf(from, id, loadedCount);
  if (last === null) throw new Refusal('blind-count-missing', { order: orderNumber });
  if (agrees) return;
  const counted = last.unitCount;
  if (difference === null) throw new Refusal('blind-count-differs', { counted });
  throw new Refusal('blind-count-differs-again', { counted, scanned: loadedCount });
}

/** A reason only where something is short; one that is given for nothing is dropped. Words alone are another reason. */
async function shortReasonOf(tx: Tx, delivery: DeliveryRow, given: CloseDeliveryForm): Promise<ShortReason> {
  const short = (await progressOf(tx, delivery.id)).filter((line) => line.leftCount > 0);
  if (short.length === 0) return { shortCode: null, shortReason: null };
  const shortReason = given.shortReason ?? null;
  const shortCode = given.shortCode ?? (shortReason === null ? null : 'other');
  if (shortCode === null) {
    throw new Refusal('short-reason-needed', {
      lines: short.map((line) => `${line.name}: ${line.leftCount}`).join(', '),
    });
  }
  if (shortCode === 'other' && shortReason === null) throw new Refusal('short-words-needed');
  return { shortCode, shortReason };
}
