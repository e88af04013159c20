import { gs1CheckDigit } from '../../src/core/identifiers/check-digit.js';
import { codePattern } from '../../src/demo/life/coder.js';
import { planDemo, type DemoPlan } from '../../src/demo/life/demo-plan.js';
import { askedByHouse, idIn, type Give } from '../../src/demo/set-up/demo-hand.js';
import { setUpPeople } from '../../src/demo/set-up/set-up-people.js';
import { setUpPlant } from '../../src/demo/set-up/set-up-plant.js';
import { AddCustomer } from '../../src/plant/add-customer.js';
import { AddPackFormat } from '../../src/plant/add-pack-format.js';
import { Ids } from '../../src/platform/ids.js';
import type { BenchPlant } from './history.js';

const numbersUpTo = (count: number): readonly number[] => Array.from({ length: count }, (_, place) => place + 1);
const packsPerPallet = 1200;
const customerCount = 40;

/** Four hoppers of six tonnes, each over a line of its own; three dryers. Sizes are invented. */
function benchPlan(): DemoPlan {
  return {
    ...planDemo({ days: 1, seed: 1, size: 'large' }),
    dryers: numbersUpTo(3).map((number) => ({ code: `D${number}`, kilogramsPerMinute: 93 })),
    hoppers: numbersUpTo(4).map((number) => ({
      ...{ code: `H${number}`, capacityGrams: 6_000_000, tipBelowGrams: 1_400_000, drainMinutes: 4 },
    })),
    lines: numbersUpTo(4).map((number) => ({ code: String(number), hopper: `H${number}`, packs: {} })),
  };
}

/** Sets plant and people up by the house's own commands, as the demo does, with a format of a kilogram. */
export async function setUpBenchPlant(give: Give): Promise<BenchPlant> {
  const siteId = give(Ids).next();
  const plant = await setUpPlant(give, benchPlan(), siteId);
  await setUpPeople(give, siteId);
  const asked = askedByHouse(siteId, 'administrator', 'plant-manager');
  const gradeId = idIn(plant.grades, 'WS2');
  const digits = '952012300040';
  const { id: formatId } = await give(AddPackFormat).execute(asked, {
    ...{ code: 'BN-1KG', name: 'White sugar 1 kg, high pallet', gtin: digits + gs1CheckDigit(digits) },
    ...{ nominalGrams: 1000, assumedLowerMilligrams: 995_000, assumedUpperMilligrams: 1_010_000, packTareGrams: 9 },
    ...{ packsPerPallet, palletTareGrams: 24_000, codePattern, bestBeforeMonths: null, gradeIds: [gradeId] },
  });
  const customers = [...plant.customers];
  for (const number of numbersUpTo(customerCount)) {
    const form = { code: `B-${number}`, name: `Invented customer ${number}`, address: `${number} Example Way` };
    customers.push((await give(AddCustomer).execute(asked, { ...form, gln: null })).id);
  }
  return {
    ...{ siteId, gradeId, formatId, packsPerPallet, customers, dryers: [...plant.dryers.values()] },
    hoppers: [...plant.lines].map(([lineCode, lineId]) => ({
      ...{ lineCode, lineId, hopperId: idIn(plant.hoppers, `H${lineCode}`), coderId: idIn(plant.coders, lineCode) },
    })),
    bagScaleId: idIn(plant.scales, 'S1'),
    platformScaleId: idIn(plant.scales, 'P1'),
    benchScaleId: idIn(plant.scales, 'B1'),
    placeId: idIn(plant.places, 'LANE-1'),
  };
}
