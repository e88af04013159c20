import { gs1CheckDigit } from '../../core/identifiers/check-digit.js';
import { makeGln } from '../../core/identifiers/gln.js';
import { threeByEightShifts } from '../../core/shift-calendar/common-patterns.js';
import type { Asked } from '../../journal/entry-draft.js';
import { AddBagType } from '../../plant/add-bag-type.js';
import { AddCoder } from '../../plant/add-coder.js';
import { AddCustomer } from '../../plant/add-customer.js';
import { AddDryer } from '../../plant/add-dryer.js';
import { AddHopper } from '../../plant/add-hopper.js';
import { AddPackingLine } from '../../plant/add-packing-line.js';
import { AddScale } from '../../plant/add-scale.js';
import { AddSite } from '../../plant/add-site.js';
import { AddStorePlace } from '../../plant/add-store-place.js';
import { CheckScale } from '../../plant/check-scale.js';
import { LinkHopperToLine } from '../../plant/link-hopper-to-line.js';
import { SetCoderClock } from '../../plant/set-coder-clock.js';
import { SetRuleSet } from '../../plant/set-rule-set.js';
import { SetShiftPattern } from '../../plant/set-shift-pattern.js';
import { VerifyScale } from '../../plant/verify-scale.js';
import type { DemoPlan } from '../life/demo-plan.js';
import { productionDayStart, timeZone } from '../life/minutes.js';
import { askedByHouse, idIn, type Give, type PlantIds } from './demo-hand.js';
import { setUpChecks } from './set-up-checks.js';
import { setUpWeighers } from './set-up-weighers.js';
import { setUpFilling } from './set-up-filling.js';
import { setUpGoods } from './set-up-goods.js';

/** Alder Quay: invented, with GS1's demonstration prefix 952. */
const companyPrefix = '9520123';

/** Sets the plant up by its commands, as the demo's plan wants it. */
export async function setUpPlant(give: Give, plan: DemoPlan, siteId: string): Promise<PlantIds> {
  const asked = askedByHouse(siteId, 'administrator', 'plant-manager');
  await give(AddSite).execute(asked, {
    code: 'AQ',
    name: 'Alder Quay',
    timeZone,
    productionDayStart,
    gln: makeGln(companyPrefix, 1),
    companyPrefix,
    ssccExtensionDigit: 0,
  });
  await setRules(give, asked);
  const machines = await addMachines(give, asked, plan);
  const scales = await addScales(give, asked);
  await give(AddBagType).execute(asked, {
    ...{ code: 'FOURLOOP', name: 'Four loops, with liner', safeLoadGrams: 1_250_000 },
    ...{ usualTareGrams: 2_600, leastTareGrams: 2_200, mostTareGrams: 3_000 },
  });
  const goods = await setUpGoods(give, asked, (digits) => digits + gs1CheckDigit(digits));
  await setUpFilling(give, asked, { ...machines, ...goods });
  const checkPlans = await setUpChecks(give, asked, machines.lines);
  const weighers = await setUpWeighers(give, asked, machines.lines);
  const places = new Map<string, string>();
  for (const code of ['LANE-1', 'LANE-2', 'LANE-3', 'LANE-4', 'LANE-5', 'LANE-6', 'BAGS', 'RETURNS']) {
    places.set(code, (await give(AddStorePlace).execute(asked, { code, kind: 'store' })).id);
  }
  places.set('DOCK-1', (await give(AddStorePlace).execute(asked, { code: 'DOCK-1', kind: 'dock' })).id);
  return {
    siteId,
    ...machines,
    ...goods,
    scales,
    weighers,
    places,
    customers: await addCustomers(give, asked),
    checkPlans,
  };
}

async function setRules(give: Give, asked: Asked): Promise<void> {
  await give(SetShiftPattern).execute(asked, { shifts: threeByEightShifts.map((shift) => ({ ...shift })) });
  const risk = { mostWaitingBagCount: 400, mostWaitingGrams: 420_000_000 };
  await give(SetRuleSet).execute(asked, { kind: 'tip-at-risk', ...risk });
  const checkPoints = [
    { code: 'clean', text: 'The loading space is clean and without smell' },
    { code: 'dry', text: 'The loading space is dry and its roof is whole' },
    { code: 'no-pests', text: 'There is no trace of pests' },
    { code: 'floor-sound', text: 'The floor carries a truck with a pallet' },
  ];
  await give(SetRuleSet).execute(asked, { kind: 'vehicle-check', checkPoints });
  await give(SetRuleSet).execute(asked, { kind: 'concession', concessionPersonCount: 2 });
}

async function addMachines(
  give: Give,
  asked: Asked,
  plan: DemoPlan,
): Promise<Pick<PlantIds, 'dryers' | 'hoppers' | 'lines' | 'coders'>> {
  const [dryers, hoppers] = [new Map<string, string>(), new Map<string, string>()];
  const [lines, coders] = [new Map<string, string>(), new Map<string, string>()];
  for (const { code } of plan.dryers) {
    dryers.set(code, (await give(AddDryer).execute(asked, { code, name: `Dryer ${code.slice(1)}` })).id);
  }
  for (const { code, capacityGrams } of plan.hoppers) {
    const form = { code, name: `Hopper ${code.slice(1)}`, capacityGrams };
    hoppers.set(code, (await give(AddHopper).execute(asked, form)).id);
  }
  for (const { code, hopper } of plan.lines) {
    const lineId = (await give(AddPackingLine).execute(asked, { code, name: `Line ${code}` })).id;
    lines.set(code, lineId);
    await give(LinkHopperToLine).execute(asked, { lineId, hopperId: idIn(hoppers, hopper) });
    const coderId = (await give(AddCoder).execute(asked, { lineId, code: `C${code}` })).id;
    coders.set(code, coderId);
    await give(SetCoderClock).execute(asked, { coderId, offsetSeconds: 0, uncertaintySeconds: 60 });
  }
  return { dryers, hoppers, lines, coders };
}

/** Bag scales S1 and S2, the platform scale P1, the bench scale B1. Only S2 is forgotten when scales are checked. */
async function addScales(give: Give, asked: Asked): Promise<ReadonlyMap<string, string>> {
  const scales = new Map<string, string>();
  const add = async (code: string, name: string, steps: readonly [number, number]) => {
    const [intervalMilligrams, maximumPermissibleErrorMilligrams] = steps;
    const form = { code, name, intervalMilligrams, maximumPermissibleErrorMilligrams, checkEveryHours: 30 };
    const { id } = await give(AddScale).execute(asked, form);
    await give(CheckScale).execute(asked, { scaleId: id, deviationMilligrams: 0 });
    scales.set(code, id);
  };
  await add('S1', 'Bag scale at the dryers', [500_000, 1_000_000]);
  await add('S2', 'Bag scale in the store', [500_000, 1_000_000]);
  await add('P1', 'Platform scale at the lines', [20_000, 50_000]);
  await add('B1', 'Bench scale for packs', [100, 500]);
  const trade = { scaleId: idIn(scales, 'S1'), verifiedOn: '2026-01-01', verifiedUntilOn: '2027-12-31' };
  await give(VerifyScale).execute(asked, trade);
  return scales;
}

async function addCustomers(give: Give, asked: Asked): Promise<readonly string[]> {
  const customers = [
    ['Fernhill Foods (invented)', '1 Example Way\nFernhill'],
    ['Copperbeck Stores (invented)', '22 Sample Street\nCopperbeck'],
    ['Millrace Bakeries (invented)', '7 Specimen Road\nMillrace'],
    ['Larkfield Wholesale (invented)', '4 Placeholder Lane\nLarkfield', 'es'],
  ] as const;
  const ids: string[] = [];
  for (const [place, [name, address, paperLanguage = null]] of customers.entries()) {
    const form = { code: `K-00${place + 1}`, gln: makeGln('9524567', place + 1), name, address, paperLanguage };
    ids.push((await give(AddCustomer).execute(asked, form)).id);
  }
  return ids;
}
