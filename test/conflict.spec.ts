import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Response } from 'supertest';
import { PlaceHold } from '../src/tracing/place-hold.js';
import { EndTip } from '../src/hopper/end-tip.js';
import { TipBag } from '../src/hopper/tip-bag.js';
import { AddHopper } from '../src/plant/add-hopper.js';
import { LinkHopperToLine } from '../src/plant/link-hopper-to-line.js';
import { shifted } from '../src/platform/clock.js';
import { aPackedRun } from './support/a-pallet.js';
import { aPerson, signedIn, type SignedInPerson, type TestPerson } from './support/a-person.js';
import { aPlant, type Plant } from './support/a-plant.js';
import { aDevice, aQueue, type TestDevice, type TestQueue } from './support/a-queue.js';
import { aReleasedBag } from './support/a-tip.js';
import { asking, openHouse, type TestHouse } from './support/house.js';

const minute = 60_000;

describe('what waited on a tablet while the world went on', () => {
  let house: TestHouse;
  let plant: Plant;
  let tablet: TestDevice;
  let ada: TestPerson;
  let ben: TestPerson;
  let agnes: TestPerson;
  let otherHopperId: string;
  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    tablet = await aDevice(house, plant.siteId);
    ada = await aPerson(house, plant.siteId, { roles: ['line-lead'], name: 'Ada Fern' });
    ben = await aPerson(house, plant.siteId, { roles: ['line-lead'], name: 'Ben Sorrel' });
    agnes = await aPerson(house, plant.siteId, { roles: ['quality-officer'], name: 'Agnes Birch' });
    const hopper = { code: 'H2', name: 'Hopper 2', capacityGrams: 4_000_000 };
    otherHopperId = (await house.get(AddHopper).execute(asking(plant.actor), hopper)).id;
    const link = { lineId: plant.lineIds[1], hopperId: otherHopperId };
    await house.get(LinkHopperToLine).execute(asking(plant.actor), link);
  });
  afterAll(async () => {
    await house.close();
  });

  const rows = <Row>(strings: TemplateStringsArray, ...values: unknown[]): Promise<Row[]> =>
    house.databases.reader.sql<Row[]>(strings, ...values);
  const as = ({ personId }: TestPerson) => asking({ ...plant.actor, personId });
  const answered = ({ status, body }: Response): object => {
    const { kept = false, code = null } = body as { kept?: boolean; code?: string | null };
    return { status, kept, code };
  };
  /** What the plant's people are asked, as they read it: the newest point first. */
  const pointsRead = async (): Promise<
    readonly { readonly cause: string; readonly sentence: string; role: string }[]
  > => ((await (await signedIn(house, agnes)).get('/api/open-points')).body as { items: never[] }).items;
  const tipsOf = (bagId: string) =>
    rows<{ hopperId: string; openedAt: string }>`
      SELECT p."hopper_id" AS "hopperId", t."opened_at" AS "openedAt" FROM "tip" t
      JOIN "hopper_period" p ON p."id" = t."period_id" WHERE t."bag_id" = ${bagId} AND t."voided_by" IS NULL`;

  /** Ada's tablet is away: what she does from now on comes after `meanwhile`. */
  const away = async (
    meanwhile: () => Promise<unknown>,
  ): Promise<{ readonly queue: TestQueue & { readonly me: SignedInPerson }; readonly at: string }> => {
    const queue = await aQueue(house, ada, tablet);
    house.clock.pass(1);
    const at = house.clock.now();
    house.clock.pass(4);
    await meanwhile();
    house.clock.pass(10);
    return { queue, at };
  };

  it('records a bag that was held meanwhile as tipped, and asks quality: the bag, both people, both times', async () => {
    const bag = await aReleasedBag(house, plant);
    const { queue, at } = await away(() =>
      house.get(PlaceHold).execute(as(agnes), { kind: 'bulk-bag', id: bag.id, reason: 'torn sieve' }),
    );
    const answer = await queue.send(
      `/line/${plant.lineIds[0]}/tips`,
      { bag: bag.number, isOff: 'true' },
      { happenedAt: at },
    );
    expect(answered(answer)).toEqual({ status: 200, kept: false, code: null });
    expect(await tipsOf(bag.id)).toEqual([{ hopperId: plant.hopperId, openedAt: at }]);
    const [point] = await pointsRead();
    expect([point?.cause, point?.role]).toEqual(['happened-bag-on-hold', 'quality-officer']);
    const heldAt = shifted(at, 4 * minute);
    for (const part of [bag.number, 'Ada Fern', 'Agnes Birch', 'H1', at, heldAt])
      expect(point?.sentence).toContain(part);
    const facts = await rows<{ facts: string }>`SELECT "facts" FROM "open_point" ORDER BY "id" DESC LIMIT 1`;
    expect(facts[0]?.facts).not.toContain('Ada Fern');
  });

  it('keeps a bag that was tipped elsewhere meanwhile, and asks quality: both people, both times, both hoppers', async () => {
    const bag = await aReleasedBag(house, plant);
    const { queue, at } = await away(() => aTipBy(ben, bag.id, otherHopperId));
    const answer = await queue.send(
      `/line/${plant.lineIds[0]}/tips`,
      { bag: bag.number, isOff: 'true' },
      { happenedAt: at },
    );
    expect(answered(answer)).toEqual({ status: 200, kept: true, code: 'bag-already-tipped' });
    const thenAt = shifted(at, 4 * minute);
    expect(await tipsOf(bag.id)).toEqual([{ hopperId: otherHopperId, openedAt: thenAt }]);
    const [point] = await pointsRead();
    expect([point?.cause, point?.role]).toEqual(['entry-kept-queued', 'quality-officer']);
    for (const part of [bag.number, 'Ada Fern', 'Ben Sorrel', 'H2', at, thenAt])
      expect(point?.sentence).toContain(part);
    const { id } = answer.body as { id: string };
    const page = await (await signedIn(house, agnes)).get(`/kept-entries/${id}`);
    expect(page.text).toContain('Ben Sorrel');
    expect(page.text).toContain(`/thread?code=${bag.number}`);
    const lead = await (await signedIn(house, ada)).get(`/kept-entries/${id}`);
    const late = /href="(\/line\/[^"]*\/late\?[^"]*)"/.exec(lead.text)?.[1]?.replaceAll('&amp;', '&') ?? '';
    expect((await (await signedIn(house, ada)).get(late)).text).toContain(`value="${bag.number}"`);
  });

  it('keeps a whole tip of a bag that was tipped in part elsewhere since: what was in it then is not what is in it now', async () => {
    const bag = await aReleasedBag(house, plant);
    const { queue, at } = await away(async () => {
      const { id } = await aTipBy(ben, bag.id, otherHopperId, false);
      house.clock.pass(5);
      const rest = { grossGrams: 402_000, tareGrams: 2000, scaleId: plant.scaleId };
      await house.get(EndTip).execute(as(ben), id, rest);
    });
    const tip = { bag: bag.number, isOff: 'true' };
    const early = await queue.send(`/line/${plant.lineIds[0]}/tips`, tip, { happenedAt: at });
    expect(answered(early)).toEqual({ status: 200, kept: true, code: 'bag-tipped-since' });
    expect(await tipsOf(bag.id)).toHaveLength(1);
    const later = await queue.send(`/line/${plant.lineIds[0]}/tips`, tip, { happenedAt: house.clock.now() });
    expect(answered(later)).toEqual({ status: 200, kept: false, code: null });
    expect(await tipsOf(bag.id)).toHaveLength(2);
  });

  it('keeps the end of a tip that somebody else ended meanwhile, for quality', async () => {
    const bag = await aReleasedBag(house, plant);
    const { id } = await aTipBy(ada, bag.id, plant.hopperId, false);
    const { queue, at } = await away(() => house.get(EndTip).execute(as(ben), id, {}));
    const answer = await queue.send(`/line/${plant.lineIds[0]}/off/${id}`, {}, { happenedAt: at });
    expect(answered(answer)).toEqual({ status: 200, kept: true, code: 'tip-is-off' });
    expect((await pointsRead())[0]).toMatchObject({ cause: 'entry-kept-queued', role: 'quality-officer' });
  });

  it('keeps a stop beside one that others entered since, and never leaves the line standing for ever', async () => {
    const lineId = plant.lineIds[0];
    const { number } = await aPackedRun(house, plant, { lineId, packCount: 480 });
    const stopped = async (): Promise<void> => {
      const me = await signedIn(house, ben);
      const { id } = (await me.send('/api/stops', { run: number, stopReason: 'jam' })).body as { id: string };
      house.clock.pass(2);
      await me.send(`/api/stops/${id}/restart`, {});
    };
    const { queue, at } = await away(stopped);
    const answer = await queue.send(`/line/${lineId}/stops`, { run: number }, { happenedAt: at });
    expect(answered(answer)).toEqual({ status: 200, kept: true, code: 'line-stopped-since' });
    const standing = await rows<{ id: string }>`
      SELECT s."id" FROM "line_stop" s LEFT JOIN "line_restart" r ON r."stop_id" = s."id" WHERE r."id" IS NULL`;
    expect(standing).toEqual([]);
    expect((await pointsRead())[0]).toMatchObject({ cause: 'entry-kept-queued', role: 'line-lead' });
    const alone = await queue.send(`/line/${lineId}/stops`, { run: number }, { happenedAt: house.clock.now() });
    expect(answered(alone)).toEqual({ status: 200, kept: false, code: null });
  });

  it('keeps what the records of the run contradict, for the line lead: counts, pallets, what never goes back', async () => {
    const lineId = plant.lineIds[1];
    const { runId, number } = await aPackedRun(house, plant, { lineId, packCount: 480 });
    const me = await signedIn(house, ben);
    const { queue, at } = await away(async () => {
      await me.send(`/api/runs/${runId}/counts`, { packCount: '500' });
      house.clock.pass(2);
      await me.send(`/api/runs/${runId}/close`, { packCount: '520', loosePackCount: '40' });
    });
    const [first = '', second = ''] = (
      (await queue.me.post('/api/sscc-blocks', { numberCount: 2 })).body as { ssccs: string[] }
    ).ssccs;
    const pallet = (sscc: string) => ({ run: number, packCount: '480', sscc, label: 'false' });
    const sweepings = { kind: 'sweepings', netGrams: '2.5', scaleId: plant.scaleId, removalReason: 'floor' };
    const sent = [
      await queue.send(`/line/${lineId}/count`, { packCount: '510' }, { happenedAt: at }),
      await queue.send('/api/pallets', pallet(first), { happenedAt: at }),
      await queue.send('/api/pallets', pallet(first), { happenedAt: at }),
      await queue.send('/api/pallets', pallet(second), { happenedAt: at }),
      await queue.send(`/line/${lineId}/removals`, { ...sweepings, fate: 'rework' }, { happenedAt: at }),
      await queue.send(`/line/${lineId}/removals`, { ...sweepings, fate: 'waste' }, { happenedAt: at }),
    ];
    expect(sent.map(answered)).toEqual([
      { status: 200, kept: true, code: 'count-goes-back' },
      { status: 201, kept: false, code: null },
      { status: 200, kept: true, code: 'sscc-used-already' },
      { status: 200, kept: true, code: 'range-beyond-count' },
      { status: 200, kept: true, code: 'never-rework' },
      { status: 200, kept: false, code: null },
    ]);
    const kept = (await pointsRead()).filter(({ cause }) => cause === 'entry-kept-queued').slice(0, 4);
    expect(kept.map(({ role }) => role)).toEqual(['line-lead', 'line-lead', 'line-lead', 'line-lead']);
  });

  function aTipBy(person: TestPerson, bag: string, hopperId: string, isOff = true) {
    return house.get(TipBag).execute(as(person), { bag, hopperId, isOff });
  }
});
