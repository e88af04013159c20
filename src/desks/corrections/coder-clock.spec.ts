import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../../test/support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../../test/support/house.js';
import { hiddenFields, pageText } from '../../../test/support/page-text.js';
import { threePallets } from '../../../test/support/three-pallets.js';
import { shifted } from '../../platform/clock.js';
import { localSecondOfInstant } from '../../platform/web/local-time.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { clocksOfCoder, type ComparedClock } from '../../plant/coder-clocks.js';
import { printedTimesIn } from '../../tracing/printed-times.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
let lead: SignedInPerson;

beforeEach(async () => {
  house = await openHouse();
  reader = readerOf(house);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
});
afterEach(async () => {
  await house.close();
});

type Page = Awaited<ReturnType<SignedInPerson['send']>>;
const textOf = ({ text }: Page): string => pageText(text);
const hiddenIn = ({ text }: Page): Record<string, string> => hiddenFields(text);

const timeZone = 'Europe/Berlin';
const local = (at: string): string => localSecondOfInstant(at, timeZone);
const clocks = (): Promise<readonly ComparedClock[]> => clocksOfCoder(reader, plant.coderIds[0]);
const path = (): string => `/lines/${plant.lineIds[0]}/coder-clock`;

/** What the coder shows that is so much ahead of the right clock, and since when. */
const aheadBy = (seconds: number, since: string | null) => {
  const now = house.clock.now();
  return {
    ...{ shownAt: local(shifted(now, seconds * 1000)), referenceAt: local(now), uncertaintySeconds: '10' },
    ...(since === null ? {} : { validFrom: local(since).slice(0, 16), reason: 'looked at it only now' }),
  };
};

/** Which packs a time of day may be on. */
const packsOf = async (runId: string, clockText: string) =>
  (await printedTimesIn(reader, plant.siteId, [{ runId, fromCount: 0, toCount: 300 }], clockText)).map(
    ({ possible }) => [possible.fromCount, possible.toCount],
  );

describe('the page of a coder’s clock', () => {
  it('records at once what was compared just now, by the two clocks as they show', async () => {
    expect(textOf(await lead.get(path()))).toContain('right, within 30 s');
    const done = await lead.send(path(), aheadBy(-75, null));
    expect([done.status, done.headers['location']]).toEqual([303, path()]);
    expect((await clocks()).at(-1)).toMatchObject({ offsetSeconds: -75, uncertaintySeconds: 10 });
    expect(textOf(await lead.get(path()))).toContain('75 s behind, within 10 s');
  });

  it('is put right by who works at the coder or judges its codes; others see it and are offered nothing', async () => {
    await lead.send(path(), aheadBy(-75, null));
    const id = (await clocks()).at(-1)?.id ?? '';
    const correction = `/coder-clocks/${id}/correct`;
    const asRole = async (role: 'dryer-operator' | 'quality-officer') =>
      signedIn(house, await aPerson(house, plant.siteId, { roles: [role] }));
    const [operator, quality] = [await asRole('dryer-operator'), await asRole('quality-officer')];
    expect(textOf(await operator.get(path()))).toContain('75 s behind');
    expect((await operator.get(path())).text).not.toContain(correction);
    expect((await operator.get(correction)).status).toBe(403);
    const wrong = { why: 'did-not-occur', reason: 'misread' };
    expect((await operator.post(`/api/plant/coder-clocks/${id}/correction`, wrong)).status).toBe(403);
    expect((await quality.get(path())).text).toContain(correction);
    expect((await quality.get(correction)).status).toBe(200);
  });

  it('shows the lots, pallets and deliveries whose times are read otherwise, and records when that is confirmed', async () => {
    const { startedAt, runId } = await threePallets(house, plant);
    const shown = await lead.send(path(), aheadBy(1800, startedAt));
    expect(shown.status).toBe(200);
    expect(textOf(shown)).toContain('lots: 1; pallets: 3; deliveries already gone: 1; deliveries still here: 1.');
    expect(textOf(shown)).toContain('No kilograms of any bag change in them.');
    expect(textOf(shown)).toMatch(
      /Coder C1 of line 1: codes that show 2026-03-12 07:30:00 or later are read as packed from 2026-03-12 07:00:00 on, within 10 s; until now as packed from 2026-03-12 07:30:00 on, within 30 s\./,
    );
    expect(await clocks()).toHaveLength(1);
    const printed = local(shifted(startedAt, 40 * 60_000)).slice(11, 16);
    const before = await packsOf(runId, printed);
    expect((await lead.send(path(), hiddenIn(shown))).status).toBe(303);
    expect(await clocks()).toHaveLength(2);
    expect(await packsOf(runId, printed)).not.toEqual(before);
  });

  it('keeps the difference that was shown, however long somebody looks before confirming', async () => {
    const { startedAt } = await threePallets(house, plant);
    const { shownAt, uncertaintySeconds, ...since } = aheadBy(300, startedAt);
    const shown = await lead.send(path(), { shownAt, uncertaintySeconds, ...since, referenceAt: '' });
    house.clock.pass(3);
    expect((await lead.send(path(), hiddenIn(shown))).status).toBe(303);
    expect((await clocks()).at(-1)).toMatchObject({ offsetSeconds: 300 });
  });

  it('refuses what is no time and a comparison before the last one, and keeps what was entered', async () => {
    const odd = await lead.send(path(), { ...aheadBy(0, null), shownAt: '7:41' });
    expect(odd.status).toBe(422);
    expect(odd.text).toContain('7:41');
    house.clock.pass(10);
    await lead.send(path(), aheadBy(60, null));
    const early = await lead.send(path(), aheadBy(60, shifted(house.clock.now(), -30 * 60_000)));
    expect(early.status).toBe(409);
    expect(textOf(early)).toContain('a version begins at');
    expect(await clocks()).toHaveLength(2);
  });
});

describe('the page that corrects a comparison', () => {
  const correctPath = (page: Page, place = 0): string =>
    [...page.text.matchAll(/\/coder-clocks\/[0-9a-f-]+\/correct/g)].map(([found]) => found)[place] ?? 'none';

  it('shows the codes between it and the next one as they are read then, and every answer follows', async () => {
    const { startedAt, runId } = await threePallets(house, plant);
    await lead.send(path(), aheadBy(0, null));
    const first = correctPath(await lead.get(path()), 1);
    expect(textOf(await lead.get(first))).toContain('right, within 30 s');
    const noon = '2026-03-12T12:00:00';
    const wrong = { why: 'incorrect-data', shownAt: '2026-03-12T11:20:00', referenceAt: noon, reason: 'read anew' };
    const shown = await lead.send(first, wrong);
    expect(textOf(shown)).toContain('lots: 1; pallets: 3; deliveries already gone: 1; deliveries still here: 1.');
    expect(textOf(shown)).toMatch(/codes that show .* to .* are read as packed .* to .*, within 30 s; until now as/);
    const printed = local(shifted(startedAt, 5 * 60_000)).slice(11, 16);
    expect(await packsOf(runId, printed)).toEqual([]);
    expect((await lead.send(first, hiddenIn(shown))).headers['location']).toBe(path());
    expect((await clocks()).map(({ offsetSeconds }) => offsetSeconds)).toEqual([-2400, 0]);
    expect(await packsOf(runId, printed)).toEqual([[100, 200]]);
    const again = await lead.send(first, wrong);
    expect(again.status).toBe(409);
    expect(textOf(again)).toContain('This record was corrected already');
  });

  it('refuses one clock without the other, a time beyond the next comparison, and a contradiction', async () => {
    house.clock.pass(60);
    await lead.send(path(), aheadBy(0, null));
    const first = correctPath(await lead.get(path()), 1);
    const half = await lead.send(first, { why: 'incorrect-data', shownAt: '2026-03-12T11:20:00', reason: 'x' });
    expect(half.status).toBe(422);
    house.clock.pass(60);
    const later = local(house.clock.now()).slice(0, 16);
    const beyond = await lead.send(first, { why: 'incorrect-data', validFrom: later, reason: 'x' });
    expect(beyond.status).toBe(409);
    expect(textOf(beyond)).toContain('Give a time on its own side of it');
    const both = await lead.send(first, { why: 'did-not-occur', uncertaintySeconds: '5', reason: 'x' });
    expect(both.status).toBe(422);
    expect(await clocks()).toHaveLength(2);
  });

  it('is refused with its mark where the coder was compared anew since it was shown', async () => {
    await threePallets(house, plant);
    const only = correctPath(await lead.get(path()));
    const clockId = only.split('/')[2] ?? '';
    const form = { why: 'incorrect-data', offsetSeconds: 300, reason: 'ahead, not right' };
    const answer = await lead.post(`/api/plant/coder-clocks/${clockId}/correction/preview`, form);
    const body = answer.body as { readonly mark: string };
    expect(body).toMatchObject({ readings: [{ coderCode: 'C1', after: { offsetSeconds: 300 } }], byGrams: 0 });
    await lead.send(path(), aheadBy(0, null));
    const { mark } = body;
    const stale = await lead.post(`/api/plant/coder-clocks/${clockId}/correction`, form).set('preview-mark', mark);
    expect(stale).toMatchObject({ status: 409, body: { type: 'problem:preview-is-stale' } });
    expect(await lead.post(`/api/plant/coder-clocks/${clockId}/correction`, form)).toMatchObject({ status: 201 });
  });
});

describe('a clock that was wrong for a while within one lot', () => {
  it('is read as it stood then, too', async () => {
    const { startedAt, runId } = await threePallets(house, plant);
    const at = (minutes: number): string => shifted(startedAt, minutes * 60_000);
    for (const [seconds, minutes] of [
      [3600, 50],
      [0, 100],
    ] as const) {
      const shown = await lead.send(path(), aheadBy(seconds, at(minutes)));
      await lead.send(path(), hiddenIn(shown));
    }
    const times = await printedTimesIn(reader, plant.siteId, [{ runId, fromCount: 0, toCount: 300 }], '08:55');
    expect(times.map(({ clock }) => clock.offsetSeconds).toSorted()).toEqual([0, 0, 3600]);
  });
});
