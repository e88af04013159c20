import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { CheckScale } from '../plant/check-scale.js';
import { RecordChange } from '../journal/record-change.js';
import type { Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { SystemIds } from '../platform/ids.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { NotFound } from '../platform/refusal.js';
import { ExplainPoint } from './explain-point.js';
import { LookAtScales } from './look-at-scales.js';
import { openPointsOf, type PointRow } from './open-points.js';
import { clearPoints, raisePoint } from './raise-point.js';

const now = '2026-03-12T06:00:00.000Z';
const subject = { kind: 'bulk-bag', id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10' };
const ids = new SystemIds();

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let siteCount = 0;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER, { strict: false });
});
afterAll(async () => {
  await house.close();
});
beforeEach(async () => {
  house.clock.set(now);
  siteCount += 1;
  plant = await aPlant(house, { siteCode: `AQ${siteCount}` });
});

const pointsOf = (state: 'open' | 'ended', role: string | null = null): Promise<PointRow[]> =>
  openPointsOf(from, plant.siteId, { state, role, limit: 50 });

/** A rule that raises a point, inside a change as every rule is. */
function raise(cause = 'level-below-zero', id = ids.next(), personId: string | null = null): Promise<string> {
  return house.get(RecordChange).run(asking(plant.actor), {}, async (tx) => {
    const point = { id, siteId: plant.siteId, cause, facts: { kilograms: 12 }, subject, personId, at: now };
    await raisePoint(tx, { ...point, role: 'line-lead' });
    return { answer: id, entry: { action: 'explain-point', subject } };
  });
}

function clear(cause = 'level-below-zero'): Promise<number> {
  return house.get(RecordChange).run(asking(plant.actor), {}, async (tx) => {
    const what = { nextId: () => ids.next(), siteId: plant.siteId, cause, subject, personId: null, at: now };
    return { answer: await clearPoints(tx, what), entry: { action: 'explain-point', subject } };
  });
}

const explain = (pointId: string, actor: Actor = plant.actor, key?: string) =>
  house.get(ExplainPoint).execute(asking(actor, key), pointId, { explanation: 'the hatch was open' });

/** Whether the rows that say what is open agree with the points and their ends. */
async function statesAgree(): Promise<boolean> {
  const open = await from.sql<{ id: string }>`
    SELECT p."id" FROM "open_point" p WHERE p."voided_by" IS NULL
      AND NOT EXISTS (SELECT 1 FROM "open_point_end" e WHERE e."point_id" = p."id" AND e."voided_by" IS NULL)
    ORDER BY p."id"`;
  const states = await from.sql<{ id: string }>`
    SELECT "point_id" AS "id" FROM "open_point_state" ORDER BY "point_id"`;
  return JSON.stringify(open) === JSON.stringify(states);
}

describe('an open point', () => {
  it('is raised once while it is open, by two rules at once too', async () => {
    await Promise.all([raise(), raise()]);
    await raise();
    expect(await pointsOf('open')).toMatchObject([
      { cause: 'level-below-zero', facts: { kilograms: 12 }, role: 'line-lead', how: null, endedAt: null },
    ]);
    expect(await statesAgree()).toBe(true);
  });

  it('stands beside one of another cause, and is listed for its role only', async () => {
    await raise();
    await raise('count-missing');
    expect(await pointsOf('open')).toHaveLength(2);
    expect(await pointsOf('open', 'line-lead')).toHaveLength(2);
    expect(await pointsOf('open', 'loader')).toEqual([]);
  });

  it('goes when its cause is gone, and comes again with it', async () => {
    await raise();
    expect(await clear()).toBe(1);
    expect(await clear()).toBe(0);
    expect(await pointsOf('open')).toEqual([]);
    expect(await pointsOf('ended')).toMatchObject([{ how: 'cleared', explanation: null, endedAt: now }]);
    await raise();
    expect(await pointsOf('open')).toHaveLength(1);
    expect(await statesAgree()).toBe(true);
  });

  it('is explained by one of two who do so at once', async () => {
    const id = await raise();
    const outcomes = await Promise.allSettled([explain(id), explain(id)]);
    expect(outcomes.map((outcome) => outcome.status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await pointsOf('ended')).toMatchObject([{ how: 'explained', explanation: 'the hatch was open' }]);
    await expect(explain(id)).rejects.toMatchObject({ code: 'point-ended-already' });
    expect(await statesAgree()).toBe(true);
  });

  it('is explained once when the answer is sent twice', async () => {
    const id = await raise();
    expect(await explain(id, plant.actor, `explain-${siteCount}`)).toEqual({ id });
    expect(await explain(id, plant.actor, `explain-${siteCount}`)).toEqual({ id });
    expect(await pointsOf('ended')).toHaveLength(1);
  });

  it('is answered by its role, by its person, or by quality, and by nobody else', async () => {
    const loader = plant.actorWith('loader');
    await expect(explain(await raise(), loader)).rejects.toMatchObject({ code: 'point-is-for-another' });
    const own = await raise('own', ids.next(), loader.personId);
    const lead: Actor = { ...plant.actorWith('line-lead'), personId: '00000000-0000-7000-8000-000000000002' };
    await expect(explain(own, lead)).rejects.toMatchObject({ code: 'point-is-for-another' });
    await explain(own, loader);
    const [left] = await pointsOf('open');
    await explain(left!.id, { ...lead, roles: ['quality-officer'] });
    expect(await pointsOf('open')).toEqual([]);
  });

  it('is not found from another site', async () => {
    const id = await raise();
    const other = await aPlant(house, { siteCode: `OTHER${siteCount}` });
    await expect(explain(id, other.actor)).rejects.toThrow(NotFound);
  });
});

describe('the scales', () => {
  const causes = async (state: 'open' | 'ended') => (await pointsOf(state)).map((point) => point.cause).sort();
  const check = (deviationMilligrams: number) =>
    house.get(CheckScale).execute(asking(plant.actor), { scaleId: plant.staleScaleId, deviationMilligrams });

  it('raise a point for quality when one is overdue, once, and clear it by the next good check', async () => {
    await house.get(JobRunner).drain();
    expect(await pointsOf('open', 'quality-officer')).toMatchObject([
      { cause: 'scale-check-overdue', facts: { scale: 'S2' }, subjectId: plant.staleScaleId },
    ]);
    const look = { siteId: plant.siteId, scaleId: plant.staleScaleId };
    await house.get(LookAtScales).look(look);
    expect(await causes('open')).toEqual(['scale-check-overdue']);
    await check(0);
    await house.get(JobRunner).drain();
    expect(await causes('open')).toEqual([]);
    expect(await causes('ended')).toEqual(['scale-check-overdue']);
  });

  it('raise a point when a check failed, and again when the next is due', async () => {
    await check(2_000_000);
    await house.get(JobRunner).drain();
    expect(await causes('open')).toEqual(['scale-check-failed']);
    house.clock.set('2026-03-13T06:00:00.000Z');
    await house.get(JobRunner).drain();
    expect(await causes('open')).toEqual(['scale-check-failed', 'scale-check-overdue']);
    expect(await statesAgree()).toBe(true);
  });
});
