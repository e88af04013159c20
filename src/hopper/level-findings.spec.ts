import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPerson, signedIn } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import { aReleasedBag, aStartedRun, aTippedBag, jobsDone, withoutDoubt } from '../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { openPointsOf } from '../open-points/open-points.js';
import { AddHopper } from '../plant/add-hopper.js';
import { say } from '../platform/sentences/sentences.js';
import { levelOf } from './hopper-level.js';
import { currentPeriod } from './hopper-periods.js';
import { readPeriodView, type PeriodView } from './hopper-views.js';
import { RunDown } from './run-down.js';
import { TipBag } from './tip-bag.js';

let house: TestHouse;
let plant: Plant;
let exact: { readonly scaleId: string; readonly formatId: string };

beforeEach(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  exact = await withoutDoubt(house, plant);
});
afterEach(async () => {
  await house.close();
});

/** A second hopper of the site, with one bag tipped into it. */
async function tippedElsewhere(netGrams: number): Promise<{ readonly tipId: string; readonly bag: string }> {
  const capacityGrams = 4_000_000;
  const form = { code: 'H2', name: 'Hopper 2', capacityGrams };
  const { id: hopperId } = await house.get(AddHopper).execute(asking(plant.actor), form);
  const bag = await aReleasedBag(house, plant, { netGrams, scaleId: exact.scaleId });
  const { id } = await house.get(TipBag).execute(asking(plant.actor), { bag: bag.id, hopperId, isOff: true });
  return { tipId: id, bag: bag.number };
}

/** One bag of a tonne is in by the records; 1 400 kg are packed. */
async function packedTooMuch(whileOpen: () => Promise<unknown> = () => Promise.resolve()): Promise<void> {
  await aTippedBag(house, plant, { netGrams: 1_000_000, scaleId: exact.scaleId });
  const run = await aStartedRun(house, plant, { formatId: exact.formatId });
  house.clock.pass(20);
  await whileOpen();
  house.clock.pass(20);
  await packsCounted(house, plant, run.id, 700);
}

async function viewOfPeriod(): Promise<PeriodView> {
  const reader = readerOf(house);
  const period = await currentPeriod(reader, plant.hopperId);
  return readPeriodView(reader, plant.siteId, period?.id ?? '');
}

describe('a level that cannot be', () => {
  it('is laid to a tip entered at another hopper where one was, naming its bag, and to nobody else’s where none was', async () => {
    await packedTooMuch();
    const alone = await levelOf(readerOf(house), plant.hopperId);
    expect(alone.findings).toMatchObject([{ kind: 'below-zero', byGrams: 400_000 }]);
    // The site has no other hopper, so no tip can have been entered there.
    expect(alone.suspects.map(({ kind }) => kind)).not.toContain('wrong-hopper');
    expect(alone.suspects[0]).toMatchObject({ kind: 'tip-missing', cures: true });
  });

  it('names the tip of another hopper that would fit, as one of several that fit equally', async () => {
    let other = { tipId: '', bag: '' };
    await packedTooMuch(async () => {
      other = await tippedElsewhere(900_000);
    });
    const view = await viewOfPeriod();
    const wrong = view.level.suspects.find(({ kind }) => kind === 'wrong-hopper');
    expect(wrong).toMatchObject({ id: other.tipId, grams: 900_000, cures: true, isTied: true });
    expect(view.suspectTips).toMatchObject([{ bagNumber: other.bag, hopperCode: 'H2' }]);
    expect(view.missingTip).toBeNull();
    await jobsDone(house);
    const [point] = await openPointsOf(readerOf(house), plant.siteId, { state: 'open', limit: 1 });
    expect(point?.facts).toMatchObject({ best: 'tied' });
    expect(say(point?.cause ?? '', point?.facts)).toContain('would explain it as well');
    const lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
    const { text } = await lead.get(`/hopper-periods/${view.period.id}`);
    expect(text).toContain(`${other.bag} into H2`);
    expect(text).toContain('fit about as well as each other');
    expect((await lead.get(`/hoppers/${plant.hopperId}`)).text).toContain(`${other.bag} into H2`);
  });

  it('leaves a tip of another hopper out that came long after', async () => {
    await packedTooMuch();
    house.clock.pass(120);
    await tippedElsewhere(900_000);
    const { level } = await viewOfPeriod();
    expect(level.suspects.map(({ kind }) => kind)).not.toContain('wrong-hopper');
  });
});

describe('records that can be true', () => {
  it('say by when a tip that nobody entered must have shown, and that nothing can be said before', async () => {
    await aTippedBag(house, plant, { netGrams: 1_000_000, scaleId: exact.scaleId });
    const before = await viewOfPeriod();
    expect(before.missingTip).toEqual({ grams: 1_000_000, beforeAt: null });
    const run = await aStartedRun(house, plant, { formatId: exact.formatId });
    house.clock.pass(60);
    await packsCounted(house, plant, run.id, 480);
    house.clock.pass(1);
    const seenAt = house.clock.now();
    await house.get(RunDown).execute(asking(plant.actor), plant.hopperId, { atMostGrams: 50_000 });
    house.clock.pass(1);
    await aTippedBag(house, plant, { netGrams: 1_000_000, scaleId: exact.scaleId });
    const after = await viewOfPeriod();
    // Put in before the run down, a tonne more would have stood above the 50 kg that were seen.
    expect(after.missingTip).toEqual({ grams: 1_000_000, beforeAt: seenAt });
  });
});
