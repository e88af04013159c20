import { instantOf, type Minute } from '../../src/demo/life/minutes.js';
import { DeliveryClose } from '../../src/dispatch/delivery-close.entity.js';
import { DeliveryDeparture } from '../../src/dispatch/delivery-departure.entity.js';
import { DeliveryLine } from '../../src/dispatch/delivery-line.entity.js';
import { DeliveryState } from '../../src/dispatch/delivery-state.entity.js';
import { Delivery } from '../../src/dispatch/delivery.entity.js';
import { Loading } from '../../src/dispatch/loading.entity.js';
import { PalletContent } from '../../src/pallets/pallet-content.entity.js';
import { PalletState } from '../../src/pallets/pallet-state.entity.js';
import { Pallet } from '../../src/pallets/pallet.entity.js';
import { Paper } from '../../src/platform/printing/paper.entity.js';
import type { History } from './history.js';

interface OpenPart {
  readonly runId: string;
  readonly lotId: string;
  readonly fromCount: number;
  toCount: number;
}

interface StoredPallet {
  readonly id: string;
  readonly builtAt: Minute;
}

const palletsAVehicle = 27;
/** So many pallets stay in store. */
const storeCount = 1500;

/** Full pallets of each line, over two runs where a shift changes; the oldest leave first, a vehicle at a time. */
export class PalletHistory {
  private readonly open = new Map<string, OpenPart[]>();
  private readonly store: StoredPallet[] = [];
  private deliveryCount = 0;

  constructor(private readonly history: History) {}

  /** Packs of a run up to this count go onto the line's pallet. */
  lay(
    of: { readonly runId: string; readonly lotId: string; readonly lineId: string },
    count: number,
    at: Minute,
  ): void {
    const { runId, lotId, lineId } = of;
    const parts = this.open.get(lineId) ?? [];
    this.open.set(lineId, parts);
    let last = parts.at(-1);
    if (last?.runId !== runId) {
      last = { runId, lotId, fromCount: 0, toCount: 0 };
      parts.push(last);
    }
    last.toCount = count;
    const packs = parts.reduce((sum, part) => sum + part.toCount - part.fromCount, 0);
    const { packsPerPallet } = this.history.plant;
    if (packs < packsPerPallet) return;
    last.toCount = count - (packs - packsPerPallet);
    this.build(parts, at);
    parts.length = 0;
    parts.push({ runId, lotId, fromCount: last.toCount, toCount: count });
  }

  /** Vehicles leave with what is beyond the usual store. */
  dispatch(at: Minute): void {
    for (let minute = at; this.store.length >= storeCount + palletsAVehicle; minute += 40) {
      this.deliver(this.store.splice(0, palletsAVehicle), minute);
    }
  }

  /** What is in store when history ends. */
  end(): void {
    for (const { id, builtAt } of this.store) this.putState(id, 'in-store', this.history.plant.placeId, builtAt);
  }

  private build(parts: readonly OpenPart[], at: Minute): void {
    const { sink, numbers, plant } = this.history;
    const id = numbers.id(at * 60_000);
    const { siteId, formatId, packsPerPallet } = plant;
    sink.put(Pallet, {
      ...{ id, siteId, sscc: numbers.sscc(), formatId, builtAt: instantOf(at), packCount: packsPerPallet },
      ...{ isFull: true, voidedBy: null },
    });
    for (const { runId, lotId, fromCount, toCount } of parts) {
      if (fromCount === toCount) continue;
      const contentId = numbers.id(at * 60_000);
      sink.put(PalletContent, { id: contentId, palletId: id, runId, lotId, fromCount, toCount, voidedBy: null });
    }
    this.store.push({ id, builtAt: at });
  }

  private putState(palletId: string, status: PalletState['status'], placeId: string, at: Minute): void {
    this.history.sink.put(PalletState, { palletId, status, placeId, changedAt: instantOf(at) });
  }

  private deliver(pallets: readonly StoredPallet[], at: Minute): void {
    const { sink, numbers, plant, random } = this.history;
    const id = numbers.id(at * 60_000);
    const nextId = () => numbers.id(at * 60_000);
    const [happenedAt, planned] = [instantOf(at), instantOf(at).slice(0, 10)];
    this.deliveryCount += 1;
    const { siteId, formatId, packsPerPallet } = plant;
    const orderNumber = `O-${this.deliveryCount}`;
    const customerId = random.pick(plant.customers);
    sink.put(Delivery, { id, siteId, customerId, orderNumber, plannedOn: planned, voidedBy: null });
    const orderedCount = pallets.length * packsPerPallet;
    sink.put(DeliveryLine, {
      ...{ id: nextId(), deliveryId: id, lineNumber: 1, formatId, gradeId: null, orderedCount, voidedBy: null },
    });
    for (const [place, { id: palletId }] of pallets.entries()) {
      const loading = { deliveryId: id, palletId, bagId: null, place: place + 1, loadedAt: happenedAt };
      sink.put(Loading, { id: nextId(), ...loading, voidedBy: null });
      this.putState(palletId, 'dispatched', id, at);
    }
    const paperId = nextId();
    const number = numbers.document('delivery-note', 'DN', Number(planned.slice(0, 4)));
    sink.put(Paper, {
      ...{ id: paperId, siteId, kind: 'delivery-note', edition: '1', number, subjectKind: 'delivery', subjectId: id },
      ...{ facts: '{}', issuedAt: happenedAt, personId: null, voidedBy: null },
    });
    sink.put(DeliveryClose, {
      ...{ id: nextId(), deliveryId: id, seal: 'none', shortCode: null, shortReason: null, remarks: null },
      ...{ blindCount: pallets.length, paperId, closedAt: happenedAt, voidedBy: null },
    });
    sink.put(DeliveryDeparture, { id: nextId(), deliveryId: id, leftAt: happenedAt, voidedBy: null });
    sink.put(DeliveryState, { deliveryId: id, status: 'left', loadedCount: pallets.length });
  }
}
