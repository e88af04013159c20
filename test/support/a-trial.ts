import { meanShareLeft, type Residence } from '../../src/core/hopper-flow/residence-time.js';
import type { RecordTrialForm } from '../../src/hopper/flow-model.form.js';
import { RecordTrial, type TrialAnswer } from '../../src/hopper/record-trial.js';
import { aReleasedBag } from './a-tip.js';
import type { Plant } from './a-plant.js';
import { asking, type TestHouse } from './house.js';

/** What the laboratory is off in each sample, in standard uncertainties: drawn once, and well behaved. */
const offs = [0.6, -0.9, 0.3, 1.1, -0.4, -1.2, 0.8, 0.1, -0.7, 1.3, -0.2, 0.5, -1.0, 0.4, 0.9, -0.6];

/** Three zones that hold half a tonne. */
export const threeZones: Residence = { zoneCount: 3, holdUpGrams: 500_000, plugGrams: 0 };

/** Samples every 100 kg behind a hopper that flows so, bags of 20 and 40 IU, each colour known to 0.3 IU. */
export function aTrialForm(
  bags: Pick<RecordTrialForm, 'beforeBag' | 'afterBag'>,
  flow: Residence = threeZones,
): RecordTrialForm {
  const samples = offs.map((off, place) => {
    const atGrams = (place + 1) * 100_000;
    const share = meanShareLeft(flow, { fromGrams: atGrams, toGrams: atGrams });
    return { atGrams, colourIu: (20 + 20 * share + 0.3 * off).toFixed(2) };
  });
  return { ...bags, beforeColourIu: '20', afterColourIu: '40', standardIu: '0.3', samples };
}

/** A trial on the hopper of the plant, made now on two bags of its own. */
export async function aTrial(house: TestHouse, plant: Plant, flow: Residence = threeZones): Promise<TrialAnswer> {
  const [before, after] = [await aReleasedBag(house, plant), await aReleasedBag(house, plant)];
  const form = aTrialForm({ beforeBag: before.number, afterBag: after.number }, flow);
  return house.get(RecordTrial).execute(asking(plant.actor), plant.hopperId, form);
}
