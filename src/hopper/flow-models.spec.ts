import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPerson, signedIn } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import { aProvenEmpty, aReleasedBag, aStartedRun, aTippedBag, withoutDoubt } from '../../test/support/a-tip.js';
import { aTrial, aTrialForm, threeZones } from '../../test/support/a-trial.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { ChooseFlowModel } from './choose-flow-model.js';
import { readFlowView } from './flow-view.js';
import { sourcesOfRanges, type RunRange } from './hopper-links.js';
import { currentPeriod } from './hopper-periods.js';
import { likelyLayersOf } from './likely-layers.js';
import { RecordTrial } from './record-trial.js';
import { trialOf } from './tracer-trials.js';
import { WithdrawFlowModel, WithdrawTrial } from './withdraw-flow-fact.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;

const refused = (code: string) => expect.objectContaining({ name: 'Refusal', code });
const unknown = (kind: string) => expect.objectContaining({ name: 'NotFound', kind });
const longAgo = '2026-01-01T00:00:00.000Z';
const wrong = { why: 'incorrect-data', reason: 'written down wrongly' } as const;

beforeEach(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  reader = readerOf(house);
});
afterEach(async () => {
  await house.close();
});

const choose = (form: {
  kind: 'first-in-first-out' | 'pour-and-drain' | 'stirred-zones';
  trialId?: string;
  validFrom?: string;
}) => house.get(ChooseFlowModel).execute(asking(plant.actor), plant.hopperId, form);

describe('a tracer trial', () => {
  it('keeps its samples in order and says how the hopper mixes, with its doubt', async () => {
    const { id, number } = await aTrial(house, plant);
    expect(number).toBe(1);
    const { samples, fit } = await trialOf(reader, plant.siteId, id);
    expect(samples.map(({ fromGrams }) => fromGrams)).toEqual(
      Array.from({ length: 16 }, (_, place) => (place + 1) * 100_000),
    );
    if (!fit.ok) throw new Error(fit.problem);
    expect(Math.abs(fit.holdUpGrams.value - 500_000)).toBeLessThan(3 * fit.holdUpGrams.standard);
    expect(Math.abs(fit.zoneCount.value - 3)).toBeLessThan(3 * fit.zoneCount.standard);
    expect(fit.zones.zoneCount).toBe(3);
    expect((await aTrial(house, plant)).number).toBe(2);
  });

  it('may count packs, of which each is all that left while it was filled', async () => {
    const [before, after] = [await aReleasedBag(house, plant), await aReleasedBag(house, plant)];
    const form = aTrialForm({ beforeBag: before.sscc, afterBag: after.id });
    const samples = form.samples.map(({ colourIu }, place) => ({ packNumber: (place + 1) * 50, colourIu }));
    const byPacks = { ...form, samples: samples.toReversed(), packGrams: 2000 };
    const { id } = await house.get(RecordTrial).execute(asking(plant.actor), plant.hopperId, byPacks);
    const found = await trialOf(reader, plant.siteId, id);
    expect(found.samples[0]).toMatchObject({ fromGrams: 98_000, toGrams: 100_000 });
    expect(found.fit.ok).toBe(true);
    const record = house.get(RecordTrial);
    const asked = asking(plant.actor);
    const badPlace = { name: 'BadForm', problems: [{ field: 'samples.0' }] };
    await expect(record.execute(asked, plant.hopperId, { ...byPacks, packGrams: null })).rejects.toMatchObject(
      badPlace,
    );
    const both = { ...byPacks, samples: [{ packNumber: 1, atGrams: 1, colourIu: '20' }] };
    await expect(record.execute(asked, plant.hopperId, both)).rejects.toMatchObject(badPlace);
    const one = { ...form, afterBag: before.number };
    await expect(record.execute(asked, plant.hopperId, one)).rejects.toEqual(refused('trial-of-one-bag'));
  });

  it('sent twice counts once', async () => {
    const [before, after] = [await aReleasedBag(house, plant), await aReleasedBag(house, plant)];
    const form = aTrialForm({ beforeBag: before.number, afterBag: after.number });
    const asked = { ...asking(plant.actor), key: 'once' };
    const first = await house.get(RecordTrial).execute(asked, plant.hopperId, form);
    expect(await house.get(RecordTrial).execute(asked, plant.hopperId, form)).toEqual(first);
    expect((await readFlowView(reader, plant.siteId, plant.hopperId)).trials).toHaveLength(1);
  });
});

describe('a flow model', () => {
  it('other than first in, first out is chosen on a trial that says so, and on no other', async () => {
    await expect(choose({ kind: 'stirred-zones' })).rejects.toEqual(refused('model-needs-trial'));
    await expect(choose({ kind: 'pour-and-drain' })).rejects.toEqual(refused('model-needs-trial'));
    const [before, after] = [await aReleasedBag(house, plant), await aReleasedBag(house, plant)];
    const form = aTrialForm({ beforeBag: before.number, afterBag: after.number });
    const few = await house
      .get(RecordTrial)
      .execute(asking(plant.actor), plant.hopperId, { ...form, samples: form.samples.slice(0, 7) });
    await expect(choose({ kind: 'stirred-zones', trialId: few.id })).rejects.toMatchObject({
      ...{ code: 'trial-says-nothing', facts: { trial: few.number, problem: 'too-few-samples' } },
    });
    const three = await aTrial(house, plant);
    await expect(choose({ kind: 'pour-and-drain', trialId: three.id })).rejects.toEqual(
      refused('trial-mixes-otherwise'),
    );
    await expect(choose({ kind: 'stirred-zones', trialId: before.id })).rejects.toEqual(unknown('tracer-trial'));
    await choose({ kind: 'stirred-zones', trialId: three.id, validFrom: longAgo });
    const one = await aTrial(house, plant, { zoneCount: 1, holdUpGrams: 400_000, plugGrams: 0 });
    await choose({ kind: 'pour-and-drain', trialId: one.id });
    house.clock.pass(1);
    await choose({ kind: 'first-in-first-out' });
    await expect(choose({ kind: 'first-in-first-out', validFrom: longAgo })).rejects.toMatchObject({ name: 'Refusal' });
    const { models } = await readFlowView(reader, plant.siteId, plant.hopperId);
    expect(models.map(({ kind, trialNumber }) => [kind, trialNumber])).toEqual([
      ['first-in-first-out', null],
      ['pour-and-drain', one.number],
      ['stirred-zones', three.number],
    ]);
    expect(models[2]).toMatchObject({ zoneCount: 3 });
  });

  it('is withdrawn before its trial is, and the one before is in force again', async () => {
    const trial = await aTrial(house, plant);
    const model = await choose({ kind: 'stirred-zones', trialId: trial.id, validFrom: longAgo });
    const trialBack = () => house.get(WithdrawTrial).execute(asking(plant.actor), trial.id, wrong);
    const modelBack = () => house.get(WithdrawFlowModel).execute(asking(plant.actor), model.id, wrong);
    await expect(trialBack()).rejects.toEqual(refused('trial-in-use'));
    await modelBack();
    await trialBack();
    await expect(modelBack()).rejects.toEqual(unknown('hopper-model'));
    await expect(trialBack()).rejects.toEqual(unknown('tracer-trial'));
    const view = await readFlowView(reader, plant.siteId, plant.hopperId);
    expect([view.models, view.trials]).toEqual([[], []]);
    expect((await aTrial(house, plant)).number).toBe(2);
  });
});

describe('what is likely in packs', () => {
  const grams = (links: Awaited<ReturnType<typeof sourcesOfRanges>>) =>
    new Map(links.map((link) => [link.bagId, link]));

  /** Two bags with packs of 1 400 kg in between and after; the asked ones straddle the change. */
  async function twoBags(): Promise<{ bags: readonly string[]; ranges: readonly RunRange[] }> {
    const { scaleId, formatId } = await withoutDoubt(house, plant);
    const tipped = async () => (await aTippedBag(house, plant, { netGrams: 1_000_000, scaleId })).bag.id;
    const first = await tipped();
    const run = await aStartedRun(house, plant, { formatId });
    house.clock.pass(10);
    await packsCounted(house, plant, run.id, 300);
    house.clock.pass(1);
    const second = await tipped();
    house.clock.pass(10);
    await packsCounted(house, plant, run.id, 700);
    return { bags: [first, second], ranges: [{ runId: run.id, fromCount: 300, toCount: 600 }] };
  }

  it('follows the model; what is sure and what is possible stay to the gram', async () => {
    const { bags, ranges } = await twoBags();
    const before = await sourcesOfRanges(reader, ranges);
    const trial = await aTrial(house, plant);
    await choose({ kind: 'stirred-zones', trialId: trial.id, validFrom: longAgo });
    const after = grams(await sourcesOfRanges(reader, ranges));
    for (const { bagId, leastGrams, mostGrams } of before) {
      expect(after.get(bagId)).toMatchObject({ leastGrams, mostGrams });
    }
    const [first = '', second = ''] = bags;
    expect(grams(before).get(first)?.likelyGrams).toBe(400_000);
    // Three zones keep some of the first bag back, where first in, first out lets all 400 kg go at once.
    expect(after.get(first)?.likelyGrams).toBeLessThan(390_000);
    const likely = (after.get(first)?.likelyGrams ?? 0) + (after.get(second)?.likelyGrams ?? 0);
    expect(Math.abs(likely - 600_000)).toBeLessThanOrEqual(1);
  });

  it('is what is worth looking for: of bags mixed in, those with a thousandth of the packs, one pack at most', async () => {
    const trial = await aTrial(house, plant, { zoneCount: 1, holdUpGrams: 400_000, plugGrams: 0 });
    await choose({ kind: 'pour-and-drain', trialId: trial.id, validFrom: longAgo });
    const { scaleId, formatId } = await withoutDoubt(house, plant);
    let packCount = 0;
    let runId: string | null = null;
    // Packs of 2 kg; each bag of 1 t is poured on 400 kg of what was there before.
    for (let place = 0; place < 9; place += 1) {
      await aTippedBag(house, plant, { netGrams: 1_000_000, scaleId });
      runId ??= (await aStartedRun(house, plant, { formatId })).id;
      house.clock.pass(10);
      packCount += place === 0 ? 300 : 500;
      await packsCounted(house, plant, runId, packCount);
      house.clock.pass(1);
    }
    const wordsOf = async (fromCount: number, toCount: number) => {
      const links = await sourcesOfRanges(reader, [{ runId: runId ?? '', fromCount, toCount }]);
      expect(links).toHaveLength(9);
      return links.map(({ word, likelyGrams }): readonly [string, number] => [
        word === 'sure' ? 'likely' : word,
        likelyGrams,
      ]);
    };
    // Of what is inside after each pour 400 of 1400 kg stay for the next: a geometric series.
    const ofTonne = await wordsOf(packCount - 500, packCount);
    const r = 400 / 1400;
    ofTonne.forEach(([, grams], place) => {
      const share = place === 8 ? r ** 8 : (1 - r) * r ** place;
      expect(Math.abs(grams - 1_000_000 * share)).toBeLessThan(1);
    });
    expect(ofTonne.map(([word]) => word)).toEqual([
      ...Array.from({ length: 6 }, () => 'likely'),
      ...Array.from({ length: 3 }, () => 'possible'),
    ]);
    // In eight tonnes a bag must have left a whole pack: 8 kg would hide what fills four of them.
    const ofAll = await wordsOf(300, packCount);
    expect(ofAll.every(([word, grams]) => (word === 'likely') === grams >= 2000)).toBe(true);
    // In one pack a thousandth of it is enough.
    const ofPack = await wordsOf(packCount - 1, packCount);
    expect(ofPack.map(([word]) => word)).toEqual(ofTonne.map(([word]) => word));
    expect(ofPack.every(([word, grams]) => (word === 'likely') === grams >= 2)).toBe(true);
  });

  it('goes by the model that was in force when the period began', async () => {
    const { ranges } = await twoBags();
    const before = await sourcesOfRanges(reader, ranges);
    const trial = await aTrial(house, plant, { zoneCount: 1, holdUpGrams: 400_000, plugGrams: 0 });
    house.clock.pass(1);
    await choose({ kind: 'pour-and-drain', trialId: trial.id });
    expect(await sourcesOfRanges(reader, ranges)).toEqual(before);
    expect(await layersNow()).toMatchObject({ isMixed: false, layers: [{ grams: 600_000 }] });
    await aProvenEmpty(house, plant, { happened: true, residueGrams: 0 });
    house.clock.pass(1);
    const again = await twoBagsMore();
    expect(await layersNow()).toMatchObject({ isMixed: true });
    const { layers } = await layersNow();
    expect(layers.map(({ grams: inside }) => inside)).toEqual([300_000, 300_000]);
    expect(again).toHaveLength(2);
  });

  async function twoBagsMore(): Promise<readonly string[]> {
    const one = await aTippedBag(house, plant, { netGrams: 1_000_000 });
    house.clock.pass(1);
    const two = await aTippedBag(house, plant, { netGrams: 1_000_000 });
    house.clock.pass(1);
    return [one.bag.id, two.bag.id];
  }

  async function layersNow() {
    const period = await currentPeriod(reader, plant.hopperId);
    return likelyLayersOf(reader, period?.id ?? '', 600_000);
  }
});

describe('how a hopper flows, over HTTP', () => {
  it('is entered on a page and read as JSON by whoever may', async () => {
    const [before, after] = [await aReleasedBag(house, plant), await aReleasedBag(house, plant)];
    const officer = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
    const { samples, ...head } = aTrialForm({ beforeBag: before.number, afterBag: after.number }, threeZones);
    const path = `/hoppers/${plant.hopperId}`;
    const lines = samples.map(({ atGrams, colourIu }) => `${(atGrams ?? 0) / 1000}\t${colourIu.replace('.', ',')}`);
    const typed = { ...head, samplesText: [...lines, 'soon 20'].join('\n') };
    const again = await officer.post(`${path}/trials/new`, typed);
    expect(again.text).toContain('Line 17 (“soon 20”)');
    const sent = await officer.post(`${path}/trials/new`, { ...typed, samplesText: lines.join('\n') });
    expect(sent.status).toBeLessThan(400);
    const view = await officer.get(`/api${path}/flow`);
    expect(view.body).toMatchObject({ models: [], trials: [{ trial: { number: 1 }, fit: { ok: true } }] });
    const { trials } = view.body as { trials: { trial: { id: string } }[] };
    const trialId = trials[0]?.trial.id ?? '';
    const bad = await officer.post(`/api${path}/flow-models`, { kind: 'stirred-zones' });
    expect([bad.status, bad.body]).toMatchObject([409, { type: expect.stringContaining('model-needs-trial') }]);
    const good = await officer.post(`/api${path}/flow-models`, { kind: 'stirred-zones', trialId, validFrom: longAgo });
    expect(good.status).toBe(201);
    const page = await officer.get(`${path}/flow`);
    expect(page.text).toContain('3 stirred zones');
    expect((await officer.get(`/tracer-trials/${trialId}`)).text).toContain('Withdraw this trial');
    const lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
    expect((await lead.post(`/api${path}/flow-models`, { kind: 'first-in-first-out' })).status).toBe(403);
    expect((await lead.get(`/tracer-trials/${trialId}`)).text).not.toContain('Withdraw this trial');
  });
});
