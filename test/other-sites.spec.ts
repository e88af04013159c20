import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { TakeComplaint } from '../src/complaints/take-complaint.js';
import { FitFilm } from '../src/packing/fit-film.js';
import { NarrowHold } from '../src/tracing/narrow-hold.js';
import { PlaceHold } from '../src/tracing/place-hold.js';
import { readerOf } from './support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson } from './support/a-person.js';
import { aPlant, type Plant } from './support/a-plant.js';
import { asking, openHouse, type TestHouse } from './support/house.js';
import { threePallets, type ThreePallets } from './support/three-pallets.js';

const reason = 'a torn sieve';

/** What one site does with the things of another: they are not there, as if nobody knew them. */
describe('what belongs to another site', () => {
  let house: TestHouse;
  let plant: Plant;
  let other: Plant;
  let there: ThreePallets;
  let person: SignedInPerson;
  const things: Record<string, string> = {};

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
    other = await aPlant(house, { siteCode: 'BW' });
    there = await threePallets(house, plant);
    const film = { film: 'F-1', kind: 'film', supplierCode: 'FS-02', packCount: 300 } as const;
    await house.get(FitFilm).execute(asking(plant.actor), there.runId, film);
    const one = async (table: string): Promise<string> => {
      const rows = await readerOf(house).sql<{ id: string }>`SELECT "id" FROM ${() => `"${table}"`} LIMIT 1`;
      return rows[0]?.id ?? '';
    };
    Object.assign(things, {
      ...{ 'bulk-bag': there.firstBag, lot: there.lotId, 'packing-run': there.runId, pallet: there.inStore },
      ...{ 'dryer-run': await one('dryer_run'), 'hopper-period': await one('hopper_period') },
      ...{ 'film-lot': await one('film_lot'), 'dryer-shift': plant.dryerId, 'packing-shift': plant.lineIds[0] },
    });
    const roles = ['quality-officer', 'line-lead'] as const;
    person = await signedIn(house, await aPerson(house, other.siteId, { roles }));
  });
  afterAll(async () => {
    await house.close();
  });

  const head = async () => readerOf(house).sql`SELECT "site_id", "sequence", "hash" FROM "journal_head" ORDER BY 1`;

  const kinds = ['bulk-bag', 'dryer-run', 'dryer-shift', 'lot', 'packing-run', 'packing-shift', 'pallet'];
  it.each([...kinds, 'hopper-period', 'film-lot'])(
    'is not held, and nothing says how far it reaches: %s',
    async (kind) => {
      const before = await head();
      const times = kind.endsWith('-shift') ? { fromAt: there.startedAt } : {};
      const scope = { kind, id: things[kind] ?? '', ...times };
      expect(await person.post('/api/holds', { ...scope, reason })).toMatchObject({ status: 404 });
      const asked = new URLSearchParams(scope).toString();
      expect(await person.get(`/api/holds/reach?${asked}`)).toMatchObject({ status: 404 });
      expect(await person.get(`/quality/holds/new?${asked}`)).toMatchObject({ status: 404 });
      expect((await person.send('/quality/holds/new', { ...scope, reason })).status).toBeGreaterThanOrEqual(400);
      expect(await head()).toEqual(before);
      const own = await house.get(PlaceHold).execute(asking(plant.actor), { ...scope, kind: kind as 'lot', reason });
      expect(own.scopeId).toBe(scope.id);
    },
  );

  it('does not stand on a delivery that holds are chosen from', async () => {
    const rows = await readerOf(house).sql<{ id: string }>`SELECT "id" FROM "delivery"`;
    for (const { id } of rows) {
      expect((await person.get(`/quality/holds/new?kind=delivery&id=${id}`)).status).toBe(404);
    }
    expect(rows).toHaveLength(2);
  });

  it.each([
    ['bulk-bag', 'bagIds'],
    ['pallet', 'palletIds'],
    ['lot', 'lotIds'],
  ] as const)('is not taken out of a hold: %s', async (kind, field) => {
    const hold = { kind: 'packing-shift', id: other.lineIds[0], fromAt: there.startedAt, reason } as const;
    const { number } = await house.get(PlaceHold).execute(asking(other.actor), hold);
    const parts = { [field]: [things[kind]] };
    const before = await head();
    const narrowing = { hold: number, reason, assessment: 'looked at', ...parts };
    await expect(house.get(NarrowHold).execute(asking(other.actor), narrowing)).rejects.toMatchObject({ kind });
    expect(await head()).toEqual(before);
  });

  it.each(['bulk-bag', 'lot', 'pallet'])('is not decided on: %s', async (kind) => {
    const before = await head();
    const decision = { kind, subject: things[kind], verdict: 'rejected', reason };
    expect(await person.post('/api/decisions', decision)).toMatchObject({ status: 404 });
    expect(await head()).toEqual(before);
  });

  it('is neither recalled nor what a complaint is about', async () => {
    const before = await head();
    const recall = { kind: 'exercise', hazard: 'safety', reason };
    for (const scopeKind of ['bulk-bag', 'lot', 'packing-run']) {
      const scopes = [{ scopeKind, scopeId: things[scopeKind] }];
      expect(await person.post('/api/recalls', { ...recall, scopes })).toMatchObject({ status: 404 });
    }
    const complaint = { category: 'foreign-body', severity: 'food-safety', words: 'a black bit' };
    for (const subjectKind of ['bulk-bag', 'lot', 'packing-run', 'pallet', 'film-lot']) {
      const about = { ...complaint, subjectKind, subjectId: things[subjectKind] };
      expect(await person.post('/api/complaints', about)).toMatchObject({ status: 404 });
    }
    expect(await head()).toEqual(before);
  });

  it('is not what a recall begins with', async () => {
    const words = { category: 'foreign-body', severity: 'food-safety', words: 'a black bit' } as const;
    const complaint = await house.get(TakeComplaint).execute(asking(plant.actor), words);
    const hold = await house.get(PlaceHold).execute(asking(plant.actor), { kind: 'lot', id: there.lotId, reason });
    const scopes = [{ scopeKind: 'packing-shift', scopeId: other.lineIds[0], fromAt: there.startedAt }];
    const recall = { kind: 'exercise', hazard: 'safety', reason, scopes };
    const before = await head();
    const begins = (originKind: string, originId: string) =>
      person.post('/api/recalls', { ...recall, originKind, originId });
    expect(await begins('hold', hold.id)).toMatchObject({ status: 404 });
    expect(await begins('complaint', complaint.id)).toMatchObject({ status: 404 });
    expect(await person.post('/api/recalls', { ...recall, originId: hold.id })).toMatchObject({ status: 422 });
    expect(await head()).toEqual(before);
  });
});
