import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf, someResults } from '../../test/support/a-bag.js';
import { aPerson, signedIn } from '../../test/support/a-person.js';
import { aPlant, colourMethod, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import { aStartedRun, aTippedBag, withoutDoubt } from '../../test/support/a-tip.js';
import { aTrial } from '../../test/support/a-trial.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { ChooseFlowModel } from '../hopper/choose-flow-model.js';
import { RunDown } from '../hopper/run-down.js';
import { ReportResult } from '../laboratory/report-result.js';
import { readThread } from './read-thread.js';
import { subjectById } from './subject-by-id.js';
import type { Thread } from './thread.js';

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

async function poured(): Promise<{ readonly id: string; readonly number: string }> {
  house.clock.pass(1);
  return (await aTippedBag(house, plant, { netGrams: 1_000_000, scaleId: exact.scaleId })).bag;
}

async function counted(runId: string, packCount: number): Promise<void> {
  house.clock.pass(1);
  await packsCounted(house, plant, runId, packCount);
}

async function threadOfRun(runId: string): Promise<Thread> {
  const from = readerOf(house);
  return readThread(from, plant.siteId, await subjectById(from, 'packing-run', runId), house.clock.now());
}

const onLine = (place: 0 | 1) => aStartedRun(house, plant, { lineId: plant.lineIds[place], formatId: exact.formatId });

describe('the thread of a run', () => {
  it('rules out what had left before by a level that was seen, and what was tipped later, and says which', async () => {
    const [one, two] = [await onLine(0), await onLine(1)];
    const gone = await poured();
    await counted(one.id, 500);
    house.clock.pass(1);
    await house.get(RunDown).execute(asking(plant.actor), plant.hopperId, { atMostGrams: 0 });
    const inside = await poured();
    await counted(two.id, 200);
    const [later, last] = [await poured(), await poured()];
    await counted(one.id, 600);
    const thread = await threadOfRun(two.id);
    expect(thread.sources.map(({ bagNumber }) => bagNumber)).toEqual([inside.number]);
    expect(thread.ruledOut.map(({ reason, bagNumbers }) => [reason, bagNumbers])).toEqual([
      ['tipped-later', [later.number, last.number]],
      ['left-before', [gone.number]],
    ]);
    expect(thread.ruledOut[0]).toMatchObject({ hopperCode: 'H1', periodNumber: 1 });
    // Through the other line everything may have come.
    expect((await threadOfRun(one.id)).ruledOut).toEqual([]);
  });

  it('rules nothing out where the records of the hopper can’t be true, and says so', async () => {
    const two = await onLine(1);
    await poured();
    await counted(two.id, 600);
    await poured();
    house.clock.pass(30);
    const thread = await threadOfRun(two.id);
    expect(thread.ruledOut).toMatchObject([{ reason: 'records-impossible', bagNumbers: [] }]);
  });

  it('names the model that likely was reckoned by, with its trial, in JSON and on the page', async () => {
    const trial = await aTrial(house, plant);
    const form = { kind: 'stirred-zones', trialId: trial.id, validFrom: '2026-01-01T00:00:00.000Z' } as const;
    await house.get(ChooseFlowModel).execute(asking(plant.actor), plant.hopperId, form);
    const one = await onLine(0);
    await poured();
    await counted(one.id, 300);
    await poured();
    house.clock.pass(1);
    const officer = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
    const answer = await officer.get(`/api/threads/packing-run/${one.id}`);
    expect(answer.body).toMatchObject({
      models: [{ hopperCode: 'H1', periodNumber: 1, kind: 'stirred-zones', trialId: trial.id, zoneCount: 3 }],
      ruledOut: [{ reason: 'tipped-later' }],
    });
    const { text } = await officer.get(`/thread?code=${one.id}`);
    expect(text).toContain('3 stirred zones');
    expect(text).toContain(`/tracer-trials/${trial.id}`);
    expect(text).toContain('Ruled out: 1');
  });

  it('says what quality it should have, calculated from its bags, with what the laboratory’s repeats scatter', async () => {
    const one = await onLine(0);
    for (const [colourIu, again] of [
      ['28', '30'],
      ['32', '31'],
      ['36', '37'],
      ['30', '30'],
    ] as const) {
      const sample = await someResults(house, plant, await poured(), { colourIu });
      const retest = { property: 'colour-iu', method: colourMethod, amount: again, isRetest: true };
      await house.get(ReportResult).execute(asking(plant.actor), { sample: sample.number, ...retest });
    }
    await counted(one.id, 1900);
    const { expected } = await threadOfRun(one.id);
    expect(expected.map(({ kind, property }) => [kind, property])).toEqual([
      ['calculated', 'moisture-percent'],
      ['calculated', 'colour-iu'],
    ]);
    // 1 t each of 29, 31.5 and 36.5 IU and 0.8 t of 30 IU; half the squared differences of the repeats are 3, over 4.
    const value = (29 + 31.5 + 36.5 + 0.8 * 30) / 3.8;
    const standard = (Math.sqrt(3 / 4 / 2) * Math.hypot(1, 1, 1, 0.8)) / 3.8;
    expect(expected[1]).toMatchObject({ value: expect.closeTo(value, 6), standard: expect.closeTo(standard, 6) });
    // Nobody analysed moisture again, so how far it is off is not known, and said so.
    expect(expected[0]).toMatchObject({ value: expect.closeTo(0.035, 9), standard: null });
    const officer = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
    expect((await officer.get(`/thread?code=${one.id}`)).text).toContain('Calculated, not tested');
  });
});
