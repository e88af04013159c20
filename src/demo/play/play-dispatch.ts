import { CheckVehicle } from '../../dispatch/check-vehicle.js';
import { LoadBag } from '../../dispatch/load-bag.js';
import { LoadPallet } from '../../dispatch/load-pallet.js';
import { PlanDelivery } from '../../dispatch/plan-delivery.js';
import { UnloadUnit } from '../../dispatch/unload-unit.js';
import { standingsOfPallets } from '../../pallets/pallet-standing.js';
import { Refusal } from '../../platform/refusal.js';
import { PlaceHold } from '../../tracing/place-hold.js';
import type { DispatchAct, Doer } from '../life/act.js';
import { packsPerPallet } from '../life/pack-formats.js';
import { idIn, type DemoHand } from '../set-up/demo-hand.js';
import { leavingPlayers, type OpenDelivery } from './play-leaving.js';
import type { Players } from './players.js';

/** A vehicle is not sent for less. */
const fewestPallets = 6;

export const checkPoints = ['clean', 'dry', 'no-pests', 'floor-sound'];

export function dispatchPlayers(): Players<DispatchAct> {
  const open = new Map<string, OpenDelivery>();
  return {
    'plan-delivery': async (hand, { delivery, customer, format, most }, { by, at }) => {
      const formatId = idIn(hand.plant.formats, format);
      const pallets = (await mayGo(hand, formatId, most)).slice(0, most);
      if (pallets.length < fewestPallets) return;
      const orderedCount = pallets.length;
      const lines = [{ formatId, orderedCount: orderedCount * packsPerPallet[format] }];
      const order = { customerId: hand.plant.customers[customer] ?? '', ...orderOf(delivery, at), lines };
      const { id } = await hand.give(PlanDelivery).execute(hand.asked(by), order);
      open.set(delivery, { id, waiting: pallets, loaded: [], orderedCount });
    },
    'plan-bag-sale': async (hand, { delivery, customer, grade, bagCount }, { by, at }) => {
      const lines = [{ gradeId: idIn(hand.plant.grades, grade), orderedCount: bagCount }];
      const order = { customerId: hand.plant.customers[customer] ?? '', ...orderOf(delivery, at), lines };
      const { id } = await hand.give(PlanDelivery).execute(hand.asked(by), order);
      open.set(delivery, { id, waiting: [], loaded: [], orderedCount: bagCount });
    },
    'check-vehicle': async (hand, { delivery, registration, haulier }, { by }) => {
      const planned = open.get(delivery);
      if (planned === undefined) return;
      const answers = checkPoints.map((point) => ({ point, isFine: true }));
      const form = { registration, haulierCode: haulier, answers };
      await hand.give(CheckVehicle).execute(hand.asked(by), planned.id, form);
    },
    'load-next': async (hand, { delivery }, { by }) => {
      const planned = open.get(delivery);
      const pallet = planned?.waiting.shift();
      if (planned === undefined || pallet === undefined) return;
      try {
        await hand.give(LoadPallet).execute(hand.asked(by), planned.id, { pallet });
        planned.loaded.push(pallet);
      } catch (error) {
        // Something was found out since the order was planned: the loader leaves it, and the load is short.
        if (!(error instanceof Refusal) || !error.code.startsWith('unit-')) throw error;
      }
    },
    'load-bag': async (hand, { delivery, bag }, { by }) => {
      const planned = open.get(delivery);
      if (planned === undefined) return;
      await hand.give(LoadBag).execute(hand.asked(by), planned.id, { bag: hand.idOf('bag', bag) });
      planned.loaded.push(bag);
    },
    'hold-loaded': (hand, { delivery, hold }, { by }) => holdLoaded(hand, open.get(delivery), { hold, by }),
    ...leavingPlayers(open),
  };
}

function orderOf(delivery: string, at: string): { readonly orderNumber: string; readonly plannedOn: string } {
  return { orderNumber: `45${delivery.split('-').at(-1)?.padStart(5, '0') ?? ''}`, plannedOn: at.slice(0, 10) };
}

/** A pallet that is on the vehicle already is put on hold, and comes off again. */
async function holdLoaded(
  hand: DemoHand,
  planned: OpenDelivery | undefined,
  { hold, by }: { readonly hold: string; readonly by: Doer },
): Promise<void> {
  const pallet = planned?.loaded.pop();
  if (planned === undefined || pallet === undefined) return;
  const reason = 'A corner was seen wet while it was loaded';
  const placed = await hand.give(PlaceHold).execute(hand.asked(by), { kind: 'pallet', id: pallet, reason });
  hand.remember('hold', hold, placed.id);
  const form = { pallet, reason: `On hold ${placed.number}` };
  await hand.give(UnloadUnit).execute(hand.asked('loader'), planned.id, form);
}

/** The oldest pallets of a format that the house lets go, as the clerk sees them on the list. */
export async function mayGo(hand: DemoHand, formatId: string, wanted: number): Promise<string[]> {
  const inStore = await hand.reader.sql<{ id: string }>`
    SELECT p."id" FROM "pallet" p JOIN "pallet_state" s ON s."pallet_id" = p."id"
    WHERE p."format_id" = ${formatId} AND s."status" = 'in-store' AND p."is_full" = ${true} AND p."voided_by" IS NULL
    ORDER BY p."built_at", p."id" LIMIT ${wanted + 10}`;
  const ids = inStore.map(({ id }) => id);
  const standings = await standingsOfPallets(hand.reader, ids);
  return ids.filter((id) => ['released', 'concession'].includes(standings.get(id)?.state ?? ''));
}
