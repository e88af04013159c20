import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aReleasedBag, aTip, aTippedBag } from '../../test/support/a-tip.js';
import { aPerson } from '../../test/support/a-person.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { threePallets } from '../../test/support/three-pallets.js';
import { SetHoldClass } from '../disposition/set-hold-class.js';
import { CorrectTip } from '../hopper/correct-tip.js';
import { ProveEmpty } from '../hopper/prove-empty.js';
import { ExplainPoint } from '../open-points/explain-point.js';
import { CorrectCount } from '../packing/correct-count.js';
import { CorrectFilmUse } from '../packing/correct-film-use.js';
import { FitFilm } from '../packing/fit-film.js';
import { countsOf } from '../packing/packing-runs.js';
import { palletOf } from '../pallets/pallet-list.js';
import { SwapPalletLabels } from '../pallets/swap-pallet-labels.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { hasSentence, say } from '../platform/sentences/sentences.js';
import { PlaceHold } from './place-hold.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;

beforeEach(async () => {
  house = await openHouse();
  reader = readerOf(house);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
});
afterEach(async () => {
  await house.close();
});

async function held(id: string, hazard: 'safety' | 'quality'): Promise<{ id: string; number: string }> {
  return heldAs({ kind: 'bulk-bag', id }, hazard);
}

async function heldAs(
  scope: { readonly kind: 'bulk-bag' | 'film-lot'; readonly id: string },
  hazard: 'safety' | 'quality',
): Promise<{ id: string; number: string }> {
  const hold = await house.get(PlaceHold).execute(asking(plant.actor), { ...scope, reason: 'glass' });
  await house.get(SetHoldClass).execute(asking(plant.actor), { hold: hold.id, hazard, reason: 'test' });
  await looked();
  return hold;
}

/** The job is done after the commit, and may be done again. */
const looked = () => house.get(JobRunner).drain();

interface Pointed {
  readonly id: string;
  readonly facts: string;
  readonly role: string;
  readonly unit: string;
}

async function points(): Promise<Pointed[]> {
  const rows = await reader.sql<Omit<Pointed, 'unit'> & { subjectId: string }>`
    SELECT "id", "facts", "role", "subject_id" AS "subjectId" FROM "open_point"
    WHERE "cause" = 'held-after-leaving' AND "voided_by" IS NULL ORDER BY "id"`;
  return rows.map(({ subjectId, ...row }) => ({ ...row, unit: subjectId.split('.')[1] ?? '' }));
}

const unitsPointedAt = async (): Promise<readonly string[]> => (await points()).map(({ unit }) => unit).sort();

describe('a correction by which a hold newly reaches what has gone', () => {
  it('by a late tip opens a point for quality on each unit that is away, once, and none on what is in store', async () => {
    const { startedAt, gone, loaded } = await threePallets(house, plant);
    const bag = await aReleasedBag(house, plant);
    const hold = await held(bag.id, 'safety');
    expect(await unitsPointedAt()).toEqual([]);
    await aTip(house, plant, bag.id, { openedAt: startedAt, happened: true });
    expect(await unitsPointedAt()).toEqual([]);
    await looked();
    expect(await unitsPointedAt()).toEqual([gone, loaded].sort());
    const point = (await points()).find(({ unit }) => unit === gone);
    const { sscc } = await palletOf(reader, gone);
    const facts = JSON.parse(point?.facts ?? '{}') as Record<string, string>;
    expect(facts).toMatchObject({ hold: hold.number, unit: sscc });
    expect(facts.customer).not.toBe('');
    expect(facts.delivery).not.toBe('');
    expect(point?.role).toBe('quality-officer');
    expect(hasSentence('held-after-leaving') && say('held-after-leaving', facts)).not.toContain('{');
    const explanation = 'customer told, pallet set aside there';
    await house.get(ExplainPoint).execute(asking(plant.actor), point?.id ?? '', { explanation });
    await aTip(house, plant, (await aReleasedBag(house, plant)).id, { openedAt: startedAt, happened: true });
    await looked();
    expect(await points()).toHaveLength(2);
  });

  it('by a tip that did not occur, where the flow then says that it is likely', async () => {
    let bag = '';
    const { firstTip, loaded } = await threePallets(house, plant, async () => {
      bag = (await aTippedBag(house, plant, { netGrams: 1_000_000 })).bag.id;
    });
    await held(bag, 'quality');
    const form = { why: 'did-not-occur', reason: 'the spout was never opened' } as const;
    await house.get(CorrectTip).execute(asking(plant.actor), firstTip, form);
    await looked();
    expect(await unitsPointedAt()).toEqual([loaded]);
  });

  it('by a count that was wrong, so that packs thought to be earlier were packed after the tip', async () => {
    let bag = '';
    const { runId, gone } = await threePallets(house, plant, async () => {
      bag = (await aTippedBag(house, plant, { netGrams: 1_000_000 })).bag.id;
    });
    await held(bag, 'safety');
    const count = (await countsOf(reader, [runId])).find(({ packCount }) => packCount === 100);
    const form = { why: 'incorrect-data', packCount: 50, reason: 'counter misread' } as const;
    await house.get(CorrectCount).execute(asking(plant.actor), count?.id ?? '', form);
    await looked();
    expect(await unitsPointedAt()).toEqual([gone]);
  });

  it('by a film lot that was on the machine earlier than was written', async () => {
    let [useId, filmLotId] = ['', ''];
    const { loaded } = await threePallets(house, plant, async () => {
      const [run] = await reader.sql<{ id: string }>`SELECT "id" FROM "packing_run" ORDER BY "id" DESC LIMIT 1`;
      const film = { film: 'F-1', kind: 'film', name: 'roll', supplierCode: 'S-1', packCount: 200 } as const;
      ({ id: useId, filmLotId } = await house.get(FitFilm).execute(asking(plant.actor), run?.id ?? '', film));
    });
    await heldAs({ kind: 'film-lot', id: filmLotId }, 'safety');
    expect(await unitsPointedAt()).toEqual([]);
    const form = { why: 'incorrect-data', packCount: 100, reason: 'read off the wrong roll' } as const;
    await house.get(CorrectFilmUse).execute(asking(plant.actor), useId, form);
    await looked();
    expect(await unitsPointedAt()).toEqual([loaded]);
  });

  it('and says nothing of a hold that was placed while an earlier change was still to be looked at', async () => {
    const { startedAt, gone } = await threePallets(house, plant);
    const bag = await aReleasedBag(house, plant);
    await aTip(house, plant, bag.id, { openedAt: startedAt, happened: true });
    await house.get(PlaceHold).execute(asking(plant.actor), { kind: 'bulk-bag', id: bag.id, reason: 'glass' });
    await looked();
    expect(await unitsPointedAt()).toEqual([]);
    const known = await reader.sql<{ after: string }>`
      SELECT "after" FROM "journal_entry" WHERE "action" = 'watch-hold-reach'`;
    expect(known.map(({ after }) => after).join()).toContain(gone);
  });

  it('by two labels that stick on each other’s pallet', async () => {
    let bag = '';
    const { gone, inStore } = await threePallets(house, plant, async () => {
      bag = (await aTippedBag(house, plant, { netGrams: 1_000_000 })).bag.id;
    });
    await held(bag, 'safety');
    expect(await unitsPointedAt()).toEqual([]);
    const [one, other] = [(await palletOf(reader, gone)).sscc, (await palletOf(reader, inStore)).sscc];
    await house.get(SwapPalletLabels).execute(asking(plant.actor), { one, other, reason: 'seen on the dock' });
    await looked();
    expect(await unitsPointedAt()).toEqual([gone]);
  });

  it('and ends it by itself where an empty, recorded late, cuts the thread before the packs', async () => {
    const { startedAt, betweenAt, runId, gone, loaded } = await threePallets(house, plant);
    const bag = await aReleasedBag(house, plant);
    await held(bag.id, 'safety');
    await aTip(house, plant, bag.id, { openedAt: startedAt, happened: true });
    await looked();
    const { personId } = await aPerson(house, plant.siteId);
    await house.get(ProveEmpty).execute(asking(plant.actor), plant.hopperId, {
      ...{ isFlowStopped: true, how: 'hatch opened, lamp', residueGrams: 0, residueUpperGrams: null, happened: true },
      ...{ secondPersonId: personId, provenAt: betweenAt, reason: 'written on the shift sheet' },
      counts: [{ run: runId, packCount: 100 }],
    });
    await looked();
    const ended = await reader.sql<{ id: string }>`SELECT "point_id" AS "id" FROM "open_point_end"`;
    const endedIds = new Set(ended.map(({ id }) => id));
    const all = await points();
    const stillOpen = all.filter(({ id }) => !endedIds.has(id)).map(({ unit }) => unit);
    expect(all.map(({ unit }) => unit).sort()).toEqual([gone, loaded].sort());
    expect(stillOpen).toEqual([gone]);
  });
});
