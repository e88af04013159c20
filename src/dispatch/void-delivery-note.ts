import { Injectable } from '@nestjs/common';
import { changeBagState } from '../drying/change-bag-state.js';
import { bagsOf } from '../drying/bulk-bags.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { changePalletState } from '../pallets/change-pallet-state.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Paper } from '../platform/printing/paper.entity.js';
import { Refusal } from '../platform/refusal.js';
import { unitsTouched } from './close-delivery.js';
import { loadedOn } from './deliveries.js';
import { DeliveryClose } from './delivery-close.entity.js';
import { DeliveryDeparture } from './delivery-departure.entity.js';
import { DeliveryState } from './delivery-state.entity.js';
import type { DeliveryRow, LoadedRow } from './delivery-rows.js';
import type { VoidNoteForm } from './delivery.form.js';
import { issueNote } from './issue-note.js';
import { returnedUnitsOf } from './returns.js';
import { passedVehicle, takeDelivery } from './take-delivery.js';

export interface VoidAnswer {
  readonly voidNumber: string;
  /** The new version; null where loading is open again. */
  readonly noteNumber: string | null;
  readonly paperId: string | null;
}

/**
 * A delivery note is made void. Its number stays in the list with the reason. Either the vehicle did not leave so
 * (did-not-occur): loading is open again, and the next close issues the next version. Or it left and the paper was wrong
 * (incorrect-data): the next version is issued at once.
 * Refusals: `note-not-issued`, `other-note-stands`, `units-came-back`, `already-corrected`.
 */
@Injectable()
export class VoidDeliveryNote {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: VoidNoteForm): Promise<VoidAnswer> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const taken = await takeDelivery(tx, asked.actor.siteId, delivery);
      const { noteNumber: voidNumber, notePaperId } = taken;
      if (!hasNote(taken) || voidNumber === null || notePaperId === null) {
        throw new Refusal('note-not-issued', { order: taken.orderNumber });
      }
      refuseOtherNote(form.note ?? null, taken.orderNumber, voidNumber);
      const loaded = await loadedOn(tx, taken.id);
      const close = await tx.findOne(DeliveryClose, { deliveryId: taken.id, voidedBy: null });
      if (close === null) throw new Refusal('note-not-issued', { order: taken.orderNumber });
      await voidFact(tx, Paper, notePaperId, change);
      await voidFact(tx, DeliveryClose, close.id, change);
      const next =
        form.correction === 'did-not-occur'
          ? await this.openAgain(tx, taken, loaded, change)
          : await this.issueAgain(tx, asked, { taken, close, form, change });
      return {
        answer: { voidNumber, noteNumber: next?.number ?? null, paperId: next?.paperId ?? null },
        entry: {
          action: 'void-delivery-note',
          subject: { kind: 'delivery', id: taken.id },
          touches: [...unitsTouched(loaded), { kind: 'paper', id: notePaperId }],
          before: { note: voidNumber },
          after: { correction: form.correction, note: next?.number ?? null },
          reason: form.reason,
        },
      };
    });
  }

  /** Nothing has left: a departure becomes void with the note, and the units are on the vehicle. */
  private async openAgain(tx: Tx, delivery: DeliveryRow, loaded: readonly LoadedRow[], change: Change): Promise<null> {
    if (delivery.status === 'left') await this.comeBack(tx, delivery, loaded, change);
    await tx.update(DeliveryState, { deliveryId: delivery.id }, { status: 'loading' });
    return null;
  }

  private async comeBack(tx: Tx, delivery: DeliveryRow, loaded: readonly LoadedRow[], change: Change): Promise<void> {
    const [placeId, at] = [delivery.id, change.recordedAt];
    if ((await returnedUnitsOf(tx, delivery.id)).length > 0) {
      throw new Refusal('units-came-back', { order: delivery.orderNumber });
    }
    const departure = await tx.findOne(DeliveryDeparture, { deliveryId: delivery.id, voidedBy: null });
    if (departure !== null) await voidFact(tx, DeliveryDeparture, departure.id, change);
    for (const { palletId } of loaded) {
      if (palletId === null) continue;
      await changePalletState(tx, palletId, { status: ['dispatched'] }, { status: 'loaded', placeId, at });
    }
    const bags = await bagsOf(
      tx,
      loaded.flatMap((row) => row.bagId ?? []),
    );
    for (const { id, remainingGrams } of bags) {
      await changeBagState(tx, id, { status: ['dispatched'] }, { status: 'loaded', remainingGrams, placeId, at });
    }
  }

  private async issueAgain(tx: Tx, asked: Asked, again: Again): Promise<{ paperId: string; number: string }> {
    const { taken, close, form, change } = again;
    const seal = form.seal ?? close.seal;
    const remarks = form.remarks ?? close.remarks;
    const { shortCode, shortReason, closedAt, blindCount } = close;
    const note = await issueNote(tx, {
      nextId: () => this.ids.next(),
      delivery: taken,
      check: await passedVehicle(tx, taken),
      seal,
      shortCode,
      shortReason,
      remarks,
      closedAt,
      issuedAt: change.recordedAt,
      personId: asked.actor.personId,
    });
    const id = this.ids.next();
    const { paperId } = note;
    const closed = { id, deliveryId: taken.id, seal, shortCode, shortReason, remarks, blindCount, paperId, closedAt };
    await tx.insert(DeliveryClose, { ...closed, voidedBy: null });
    return note;
  }
}

function hasNote({ status }: DeliveryRow): boolean {
  return status === 'closed' || status === 'left';
}

/** Two people who look at one note must not make two versions void: the second means a note that is void already. */
function refuseOtherNote(meant: string | null, order: string, stands: string): void {
  if (meant === null || meant.toUpperCase() === stands) return;
  throw new Refusal('other-note-stands', { order, note: meant, stands });
}

interface Again {
  readonly taken: DeliveryRow;
  readonly close: DeliveryClose;
  readonly form: VoidNoteForm;
  readonly change: Change;
}
