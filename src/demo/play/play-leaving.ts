import { CloseDelivery } from '../../dispatch/close-delivery.js';
import { CountBlind } from '../../dispatch/count-blind.js';
import { DecideReturn } from '../../dispatch/decide-return.js';
import { loadedUnitsOf } from '../../dispatch/deliveries.js';
import { returnedUnitsOf } from '../../dispatch/returns.js';
import { TakeBack } from '../../dispatch/take-back.js';
import { VehicleLeaves } from '../../dispatch/vehicle-leaves.js';
import { palletOf } from '../../pallets/pallet-list.js';
import type { DispatchAct } from '../life/act.js';
import { idIn, type DemoHand } from '../set-up/demo-hand.js';
import type { Players } from './players.js';

/** A delivery as the office goes through with it. */
export interface OpenDelivery {
  readonly id: string;
  /** Pallets that may go, as the house showed them when it was planned. */
  readonly waiting: string[];
  readonly loaded: string[];
  readonly orderedCount: number;
}

/** What came back stands apart from the stock. */
const returnsPlace = 'RETURNS';

type LeavingKind = 'count-blind' | 'close-delivery' | 'vehicle-leaves' | 'take-back' | 'decide-return';

/** From the count on: papers, the gate, and what comes back. */
export function leavingPlayers(
  open: Map<string, OpenDelivery>,
): Players<Extract<DispatchAct, { readonly kind: LeavingKind }>> {
  return {
    'count-blind': async (hand, { delivery, isMiscounted }, { by }) => {
      const planned = open.get(delivery);
      if (planned === undefined) return;
      const unitCount = planned.loaded.length + (isMiscounted ? 1 : 0);
      await hand.give(CountBlind).execute(hand.asked(by), planned.id, { unitCount });
    },
    'close-delivery': async (hand, { delivery, seal }, { by }) => {
      const planned = open.get(delivery);
      if (planned === undefined) return;
      const isShort = planned.loaded.length < planned.orderedCount;
      const shortCode = isShort ? 'on-hold' : null;
      await hand.give(CloseDelivery).execute(hand.asked(by), planned.id, { seal, shortCode });
    },
    'vehicle-leaves': async (hand, { delivery }, { by }) => {
      const planned = open.get(delivery);
      if (planned === undefined) return;
      await hand.give(VehicleLeaves).execute(hand.asked(by), planned.id, {});
      open.delete(delivery);
      hand.remember('delivery', delivery, planned.id);
    },
    'take-back': async (hand, { delivery }, { by }) => {
      const id = goneId(hand, delivery);
      const pallet = id === null ? undefined : (await loadedUnitsOf(hand.reader, id)).palletIds.at(-1);
      if (id === null || pallet === undefined) return;
      const units = [{ pallet, creditedCount: (await palletOf(hand.reader, pallet)).packCount }];
      const form = { why: 'refused-by-customer', placeId: idIn(hand.plant.places, returnsPlace), units } as const;
      await hand.give(TakeBack).execute(hand.asked(by), id, { ...form, remarks: 'The wrapping is torn at one side' });
    },
    'decide-return': async (hand, { delivery }, { by }) => {
      const id = goneId(hand, delivery);
      const [unit] = id === null ? [] : await returnedUnitsOf(hand.reader, id);
      if (unit === undefined) return;
      const form = { fate: 'destroy', reason: 'Torn wrapping, some packs are damp' } as const;
      await hand.give(DecideReturn).execute(hand.asked(by), unit.id, form);
    },
  };
}

/** Null where the vehicle was never sent, for want of pallets. */
function goneId(hand: DemoHand, delivery: string): string | null {
  return hand.allOf('delivery').find(([key]) => key === delivery)?.[1] ?? null;
}
