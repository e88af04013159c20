import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPerson, signedIn, type SignedInPerson } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aReleasedBag } from '../../test/support/a-tip.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import { hasSentence } from '../platform/sentences/sentences.js';

let house: TestHouse;
let plant: Plant;
let lead: SignedInPerson;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  const person = await aPerson(house, plant.siteId, { roles: ['line-lead', 'quality-officer'] });
  lead = await signedIn(house, person);
});
afterAll(async () => {
  await house.close();
});

interface Tipped {
  readonly id: string;
  readonly periodId: string;
}

describe('the hopper over HTTP', () => {
  it('starts a run, takes a tip, ends it, shows level, content, periods and tips', async () => {
    const bag = await aReleasedBag(house, plant);
    const run = await lead.post('/api/runs', { lineId: plant.lineIds[0], formatId: plant.formatId });
    expect([run.status, run.body]).toMatchObject([201, { hopperId: plant.hopperId }]);
    const tip = await lead.post('/api/tips', { bag: bag.number, hopperId: plant.hopperId });
    expect([tip.status, tip.body]).toMatchObject([201, { bagId: bag.id, offAt: null }]);
    const { id, periodId } = tip.body as Tipped;
    expect((await lead.post(`/api/tips/${id}/off`, {})).body).toMatchObject({ restGrams: 0 });
    const again = await lead.post('/api/tips', { bag: bag.number, hopperId: plant.hopperId });
    expect([again.status, again.body]).toMatchObject([409, { type: expect.stringContaining('bag-already-tipped') }]);
    const path = `/api/hoppers/${plant.hopperId}`;
    expect((await lead.get(`${path}/level`)).body).toMatchObject({ grams: 1_000_000, findings: [] });
    expect((await lead.get(`${path}/content`)).body).toMatchObject({ bags: [{ bagId: bag.id, word: 'sure' }] });
    expect((await lead.get(`${path}/periods`)).body).toMatchObject({
      items: [{ id: periodId, number: 1 }],
      next: null,
    });
    expect((await lead.get(`/api/tips?hopperId=${plant.hopperId}`)).body).toMatchObject({ items: [{ id }] });
    expect((await lead.get(`/api/tips/${id}`)).body).toMatchObject({ tip: { id }, candidateIds: [] });
    expect((await lead.get(`/api/hopper-periods/${periodId}`)).body).toMatchObject({ tips: [{ id }] });
    expect((await lead.get('/api/hoppers')).body).toMatchObject({ items: [{ code: 'H1' }] });
  });

  it('takes levels, run-downs, empties and rework bins, and refuses forms that cannot be meant', async () => {
    const path = `/api/hoppers/${plant.hopperId}`;
    house.clock.pass(20);
    const seen = await lead.post(`${path}/levels`, { how: 'probe', lowerGrams: 990_000, upperGrams: 1_001_000 });
    expect(seen.status).toBe(201);
    expect((await lead.post(`${path}/run-downs`, { atMostGrams: 5_000 })).body).toMatchObject({ isQuestioned: true });
    const second = await aPerson(house, plant.siteId);
    const proof = { isFlowStopped: true, how: 'hatch opened', residueGrams: 0, secondPersonId: second.personId };
    expect((await lead.post(`${path}/empties`, proof)).status).toBe(201);
    const bin = {
      content: 'opened-packs',
      netGrams: 10_000,
      parents: [{ run: 'PR-2026-000001', fromCount: 0, toCount: 5 }],
    };
    expect((await lead.post('/api/rework-bins', bin)).body).toMatchObject({
      type: expect.stringContaining('range-not-counted'),
    });
    expect((await lead.get('/api/rework-bins')).body).toEqual({ items: [], next: null });
    expect((await lead.post('/api/tips', { bag: 'x' })).status).toBe(422);
    expect((await lead.post(`${path}/levels`, { how: 'nose' })).status).toBe(422);
    expect((await lead.get(`/api/hoppers/${second.personId}/level`)).status).toBe(404);
    expect((await lead.get('/api/hoppers/1/level')).status).toBe(400);
  });

  it('is not for those whose role does not allow it', async () => {
    const clerk = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['dispatch-clerk'] }));
    expect((await clerk.post('/api/tips', { bag: 'x', hopperId: plant.hopperId })).status).toBe(403);
  });
});

describe('the pages of the hopper', () => {
  it('show hoppers, one hopper with its bags and cautions, and one period', async () => {
    const bag = await aReleasedBag(house, plant);
    const tip = await lead.post('/api/tips', { bag: bag.number, hopperId: plant.hopperId, isOff: true });
    const { periodId } = tip.body as Tipped;
    const pages = await Promise.all(
      ['/hoppers', `/hoppers/${plant.hopperId}`, `/hopper-periods/${periodId}`].map((path) => lead.get(path)),
    );
    for (const page of pages) {
      expect(page.status).toBe(200);
      expect(page.text).toContain('<h1>');
      expect(page.text).not.toMatch(/ style=/);
    }
    expect(pages[1]?.text).toContain(bag.number);
    expect(pages[1]?.text).toContain('suspended bag');
    expect(pages[1]?.text).toContain('lock out');
    expect(pages[2]?.text).toContain('period 2');
  });

  it('have a sentence for everything that they and the open points say', () => {
    const codes = ['below-zero', 'above-capacity', 'below-seen', 'above-seen'].map((kind) => `finding-${kind}`);
    const suspects = [
      ...['tip-late', 'tip-entered-twice', 'wrong-tare', 'tip-missing', 'wrong-hopper', 'exits-missing'],
      // A tip too many is said by points that were raised before a wrong hopper was told from it.
      ...['exits-too-many', 'empty-was-none', 'tip-too-many'],
    ];
    const rules = ['bag-rejected', 'bag-on-hold', 'grade-not-taken', 'bag-waiting', 'bag-has-bad-result'];
    const all = [
      ...codes,
      ...suspects.map((kind) => `suspect-${kind}`),
      ...rules.flatMap((code) => [code, `happened-${code}`]),
      ...['too-much-at-risk', 'empty-questioned', 'hopper-holds-other-grade'].flatMap((code) => [
        code,
        `happened-${code}`,
      ]),
    ];
    expect(all.filter((code) => !hasSentence(code))).toEqual([]);
  });
});
