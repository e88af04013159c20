import { afterAll, beforeEach, afterEach, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from '../../test/support/a-bag.js';
import { aPackedRun, aPallet, aTippedBag, decided, tipped } from '../../test/support/a-pallet.js';
import { aPlant, colourMethod, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { Decide } from '../disposition/decide.js';
import { placeHold } from '../disposition/place-hold.js';
import { SetHoldClass } from '../disposition/set-hold-class.js';
import type { HoldScope } from '../disposition/standings.js';
import { ReportResult } from '../laboratory/report-result.js';
import { TakeSample } from '../laboratory/take-sample.js';
import { CorrectCount } from '../packing/correct-count.js';
import { FitFilm } from '../packing/fit-film.js';
import { countsOf } from '../packing/packing-runs.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { SystemIds } from '../platform/ids.js';
import { say } from '../platform/sentences/sentences.js';
import { hasSentence } from '../platform/sentences/sentences.js';
import { standingOfPallet, type PalletStanding } from './pallet-standing.js';
import { SplitPallet } from './split-pallet.js';

let house: TestHouse;
let plant: Plant;
const ids = new SystemIds();
const codes = new Set<string>();

beforeEach(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100 });
});
afterEach(async () => {
  await house.close();
});
afterAll(() => {
  for (const code of codes) expect([code, hasSentence(code)]).toEqual([code, true]);
});

async function standing(palletId: string): Promise<PalletStanding> {
  const found = await standingOfPallet(readerOf(house), palletId);
  for (const reason of found.reasons) {
    codes.add(reason.code);
    expect(say(reason.code, reason.facts)).not.toContain('{');
  }
  return found;
}

async function state(palletId: string): Promise<readonly [string, readonly string[]]> {
  const { state: word, reasons } = await standing(palletId);
  return [word, reasons.map((reason) => reason.code)];
}

async function held(scope: HoldScope, part: { fromCount?: number; toCount?: number } = {}): Promise<string> {
  const draft = {
    nextId: () => ids.next(),
    siteId: plant.siteId,
    scope,
    ...part,
    reason: 'a stone was found',
    placedAt: house.clock.now(),
  };
  const hold = await house.get(UnitOfWork).run((tx) => placeHold(tx, { recordedAt: house.clock.now() }, draft));
  return hold.number;
}

const asQuality = (hold: string) =>
  house.get(SetHoldClass).execute(asking(plant.actor), { hold, hazard: 'quality', reason: 'colour only' });

/** A run over released sugar, and its first two pallets of a hundred packs. */
async function twoPallets() {
  const bag = await aTippedBag(house, plant);
  const run = await aPackedRun(house, plant, { packCount: 300 });
  const [first, second] = [
    await aPallet(house, plant, { run: run.runId }),
    await aPallet(house, plant, { run: run.runId }),
  ];
  return { bag, run, first, second };
}

describe('a pallet stands as its possible bags stand', () => {
  it('released, where all of them are, and then nothing speaks against it', async () => {
    const { bag, first } = await twoPallets();
    expect(await state(first.id)).toEqual(['released', []]);
    expect((await standing(first.id)).bags).toMatchObject([{ bagId: bag.id }]);
  });

  it('waiting, where one of them waits, even if it is only possible', async () => {
    await aTippedBag(house, plant);
    await aTippedBag(house, plant, { said: 'waiting' });
    const run = await aPackedRun(house, plant, { packCount: 100 });
    const pallet = await aPallet(house, plant, { run: run.runId });
    const { bags } = await standing(pallet.id);
    expect(bags.map((link) => link.word)).toContain('possible');
    expect(await state(pallet.id)).toEqual(['waiting', ['possible-bag-waiting']]);
  });

  it('rejected or accepted by a concession, with the reason', async () => {
    const bag = await aTippedBag(house, plant, { said: 'concession' });
    const run = await aPackedRun(house, plant, { packCount: 100 });
    const pallet = await aPallet(house, plant, { run: run.runId });
    expect(await state(pallet.id)).toEqual(['concession', ['possible-bag-concession']]);
    house.clock.pass(5);
    await decided(house, plant, { kind: 'bulk-bag', id: bag.id }, 'rejected');
    expect(await state(pallet.id)).toEqual(['rejected', ['possible-bag-rejected']]);
  });

  it('released, where the weight of a bag is doubtful: that keeps the bag from sale, not its sugar', async () => {
    await aTippedBag(house, plant, { scaleId: plant.staleScaleId });
    const run = await aPackedRun(house, plant, { packCount: 100 });
    const pallet = await aPallet(house, plant, { run: run.runId });
    expect(await state(pallet.id)).toEqual(['released', []]);
  });

  it('waiting, where a result that came after the release is outside', async () => {
    const { bag, first } = await twoPallets();
    const sample = await house.get(TakeSample).execute(asking(plant.actor), { standsFor: 'bag', bag: bag.number });
    const result = { sample: sample.number, property: 'colour-iu', method: colourMethod, amount: '61' };
    await house.get(ReportResult).execute(asking(plant.actor), result);
    expect(await state(first.id)).toEqual(['waiting', ['bag-result-outside']]);
  });

  it('waiting, where nobody knows which bags its sugar came from', async () => {
    const run = await aPackedRun(house, plant, { packCount: 100 });
    const pallet = await aPallet(house, plant, { run: run.runId });
    expect(await state(pallet.id)).toEqual(['waiting', ['no-bag-known']]);
  });
});

describe('a pallet whose packs were never counted', () => {
  it('waits, since a count that was corrected afterwards leaves packs on it that the run never made', async () => {
    const { run, first, second } = await twoPallets();
    const reader = readerOf(house);
    const correct = async (packCount: number) => {
      const last = (await countsOf(reader, [run.runId])).at(-1);
      const form = { why: 'incorrect-data', packCount, reason: 'counter misread' } as const;
      await house.get(CorrectCount).execute(asking(plant.actor), last!.id, form);
    };
    await correct(150);
    expect(await state(first.id)).toEqual(['released', []]);
    expect(await state(second.id)).toEqual(['waiting', ['packs-beyond-count']]);
    const { reasons } = await standing(second.id);
    expect(reasons[0]?.facts).toEqual({ run: run.number, packCount: 150, toCount: 200 });
    await correct(200);
    expect(await state(second.id)).toEqual(['released', []]);
  });
});

describe('what quality says of a pallet or a lot', () => {
  it('counts with the bags, the worst of all', async () => {
    const { run, first, second } = await twoPallets();
    const decide = (form: Partial<Parameters<Decide['execute']>[1]>) =>
      house.get(Decide).execute(asking(plant.actor), {
        kind: 'pallet',
        subject: first.sscc,
        verdict: 'rejected',
        reason: 'wet corner',
        ...form,
      });
    await decide({});
    expect(await state(first.id)).toEqual(['rejected', ['pallet-rejected']]);
    expect(await state(second.id)).toEqual(['released', []]);
    await decided(house, plant, { kind: 'lot', id: run.lotId }, 'concession');
    expect(await state(second.id)).toEqual(['concession', ['lot-concession']]);
    expect(await state(first.id)).toEqual(['rejected', ['pallet-rejected', 'lot-concession']]);
  });
});

describe('holds that reach a pallet', () => {
  it('are those on it, its lot, its run, its film, its hopper period and its bags', async () => {
    const { bag, run, first } = await twoPallets();
    const film = await house.get(FitFilm).execute(asking(plant.actor), run.runId, {
      film: 'F-88123',
      kind: 'film',
      supplierCode: 'FS-02',
      packCount: 300,
    });
    const { bags } = await standing(first.id);
    const scopes: HoldScope[] = [
      { kind: 'pallet', id: first.id },
      { kind: 'lot', id: run.lotId },
      { kind: 'packing-run', id: run.runId },
      { kind: 'hopper-period', id: bags[0]!.periodId },
      { kind: 'bulk-bag', id: bag.id },
    ];
    for (const [place, scope] of scopes.entries()) {
      await held(scope);
      const { state: word, reasons } = await standing(first.id);
      expect([scope.kind, word, reasons.length]).toEqual([scope.kind, 'on-hold', place + 1]);
      // Each says what is held, by the name that people know.
      const said = reasons.find(({ by }) => by?.id === scope.id);
      expect(said?.by?.name).toEqual(expect.any(String));
      const text = say(said?.code ?? '', said?.facts);
      expect(text).toContain(`${say(`scope-${scope.kind}`)} ${said?.by?.name ?? ''}, safety`);
    }
    // The roll was fitted at pack 300: no pack of this pallet has it.
    await held({ kind: 'film-lot', id: film.filmLotId });
    expect((await standing(first.id)).reasons).toHaveLength(scopes.length);
  });

  it('of a part of a run are those whose packs are on it', async () => {
    const { run, first, second } = await twoPallets();
    await held({ kind: 'packing-run', id: run.runId }, { fromCount: 100, toCount: 120 });
    expect(await state(first.id)).toEqual(['released', []]);
    expect(await state(second.id)).toEqual(['on-hold', ['held-by']]);
  });

  it('for safety cover all that is possible; for quality what is sure and likely, and the rest is named', async () => {
    await aTippedBag(house, plant);
    const later = await aTippedBag(house, plant);
    const run = await aPackedRun(house, plant, { packCount: 100 });
    const pallet = await aPallet(house, plant, { run: run.runId });
    const hold = await held({ kind: 'bulk-bag', id: later.id });
    expect(await state(pallet.id)).toEqual(['on-hold', ['held-by']]);
    await asQuality(hold);
    expect(await state(pallet.id)).toEqual(['released', ['perhaps-held-by']]);
  });
});

describe('a part of a split pallet', () => {
  async function halves() {
    const { run, first } = await twoPallets();
    const { pallets } = await house.get(SplitPallet).execute(asking(plant.actor), first.id, {
      parts: [{ shares: [{ packCount: 50 }] }, { shares: [{ packCount: 50 }] }],
      reason: 'half pallets ordered',
      label: false,
    });
    return { run, whole: first, parts: pallets };
  }

  it('is reached by what was said of the whole, until quality says something of the part', async () => {
    const { whole, parts } = await halves();
    await decided(house, plant, { kind: 'pallet', id: whole.id }, 'rejected');
    expect(await state(parts[1]!.id)).toEqual(['rejected', ['pallet-rejected']]);
    await decided(house, plant, { kind: 'pallet', id: parts[1]!.id }, 'released');
    expect(await state(parts[1]!.id)).toEqual(['released', ['pallet-released']]);
    await held({ kind: 'pallet', id: whole.id });
    expect(await state(parts[0]!.id)).toEqual(['rejected', ['pallet-rejected', 'held-by']]);
    expect(await state(parts[1]!.id)).toEqual(['on-hold', ['pallet-released', 'held-by']]);
  });

  it('may hold any pack of the whole: a safety hold on ten of them reaches both parts, a quality hold names both', async () => {
    const { run, parts } = await halves();
    const hold = await held({ kind: 'packing-run', id: run.runId }, { fromCount: 0, toCount: 10 });
    for (const part of parts) expect(await state(part.id)).toEqual(['on-hold', ['held-by']]);
    await asQuality(hold);
    for (const part of parts) expect(await state(part.id)).toEqual(['released', ['perhaps-held-by']]);
  });
});

describe('a bag that is tipped later', () => {
  it('is not in packs that were counted before', async () => {
    const { first } = await twoPallets();
    house.clock.pass(240);
    const late = await aBag(house, plant);
    await tipped(house, plant, late);
    expect((await standing(first.id)).bags.map((link) => link.bagId)).not.toContain(late.id);
    expect(await state(first.id)).toEqual(['released', []]);
  });
});
