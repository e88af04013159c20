import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aRun } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { ChangeCode } from './change-code.js';
import { CloseRun } from './close-run.js';
import { CorrectCount } from './correct-count.js';
import { CountPacks } from './count-packs.js';
import { rebuildCourses } from './follow-course.js';
import { countsOf, runOf } from './packing-runs.js';
import { coursesOf } from './run-courses.js';
import type { CountPoint } from './run-course.js';

/** One thing that is entered, a minute after the one before; `place` says which count a correction is of. */
const doing = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('count' as const), step: fc.integer({ min: 0, max: 60 }) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('code' as const), step: fc.integer({ min: 0, max: 60 }) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('close' as const), step: fc.integer({ min: 0, max: 60 }) }) },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constantFrom('correct', 'withdraw'),
      place: fc.nat({ max: 20 }),
      step: fc.integer({ min: -5, max: 5 }),
    }),
  },
);
type Doing = typeof doing extends fc.Arbitrary<infer One> ? One : never;

describe('the courses of runs', () => {
  let house: TestHouse;
  let plant: Plant;
  let from: ReadFrom;
  const tried = { closedRuns: 0, corrections: 0 };

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    from = house.app.get<ReadFrom>(READER, { strict: false });
  });

  afterAll(() => house.close());

  const stored = async (runId: string): Promise<number> =>
    (await from.sql`SELECT "run_id" FROM "run_course" WHERE "run_id" = ${runId}`).length;

  async function happens(runId: string, one: Doing): Promise<void> {
    const asked = asking(plant.actor);
    const { packCount } = await runOf(from, runId);
    const next = packCount + one.step;
    if (one.kind === 'count') await house.get(CountPacks).execute(asked, runId, { packCount: next });
    else if (one.kind === 'code')
      await house.get(ChangeCode).execute(asked, runId, { code: `L${next}`, packCount: next });
    else if (one.kind === 'close')
      await house.get(CloseRun).execute(asked, runId, { packCount: next, loosePackCount: 0 });
    else if ('place' in one) await corrects(runId, one);
  }

  async function corrects(runId: string, one: Extract<Doing, { place: number }>): Promise<void> {
    const counts = await countsOf(from, [runId]);
    const count = counts[one.place % counts.length];
    if (count === undefined) return;
    const form =
      one.kind === 'withdraw'
        ? { why: 'did-not-occur' as const, reason: 'Nobody read it' }
        : { why: 'incorrect-data' as const, reason: 'Misread', packCount: Math.max(0, count.packCount + one.step) };
    await house.get(CorrectCount).execute(asking(plant.actor), count.id, form);
    tried.corrections += 1;
  }

  const pointsOf = async (runId: string): Promise<CountPoint[]> =>
    (await countsOf(from, [runId])).map(({ packCount, countedAt, occasion }) => ({
      runId,
      packCount,
      countedAt,
      occasion,
    }));

  it('are what the counts say, whatever is entered and corrected, and none is kept of an open run', async () => {
    const attempt = fc.asyncProperty(fc.array(doing, { minLength: 4, maxLength: 14 }), async (doings) => {
      const { runId } = await aRun(house, plant);
      for (const one of doings) {
        house.clock.pass(1);
        await happens(runId, one).catch((error: unknown) => {
          if (!(error instanceof Refusal)) throw error;
        });
        const run = await runOf(from, runId);
        expect(await stored(runId)).toBe(run.closedAt === null ? 0 : 1);
        expect((await coursesOf(from, [runId])).get(runId)).toEqual(await pointsOf(runId));
      }
      const run = await runOf(from, runId);
      if (run.closedAt === null) await happens(runId, { kind: 'close', step: 0 });
      else tried.closedRuns += 1;
      house.clock.pass(1);
      expect(await house.get(UnitOfWork).run((tx) => rebuildCourses(tx, [runId]))).toBe(0);
    });
    await fc.assert(attempt, { numRuns: 25 });
    expect(tried.closedRuns).toBeGreaterThan(3);
    expect(tried.corrections).toBeGreaterThan(10);
  }, 120_000);

  it('are written anew where they are missing or wrong, and read count by count until then', async () => {
    const { runId } = await aRun(house, plant);
    house.clock.pass(1);
    await house.get(CloseRun).execute(asking(plant.actor), runId, { packCount: 40, loosePackCount: 0 });
    const right = await pointsOf(runId);
    const work = house.get(UnitOfWork);
    await work.run((tx) => tx.sql`DELETE FROM "run_course" WHERE "run_id" = ${runId}`);
    expect((await coursesOf(from, [runId])).get(runId)).toEqual(right);
    expect(await work.run((tx) => rebuildCourses(tx, [runId]))).toBe(1);
    await work.run((tx) => tx.sql`UPDATE "run_course" SET "course" = ${'{}'} WHERE "run_id" = ${runId}`);
    expect(await work.run((tx) => rebuildCourses(tx, [runId]))).toBe(1);
    expect((await coursesOf(from, [runId])).get(runId)).toEqual(right);
  });
});
