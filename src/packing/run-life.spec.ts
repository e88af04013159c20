import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aRun } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { ChangeCode } from './change-code.js';
import { CloseRun } from './close-run.js';
import { CountPacks } from './count-packs.js';
import { countsOf, lotRanges, openRunOfLine, runOf } from './packing-runs.js';
import { rebuildRunStates } from './run-states.js';

/** One thing that a line lead does, a minute after the one before; `step` is how far the counter moved by their reading. */
const doing = fc.oneof(
  fc.record({ kind: fc.constant('count' as const), step: fc.integer({ min: -20, max: 60 }) }),
  fc.record({
    kind: fc.constant('code' as const),
    step: fc.integer({ min: -20, max: 60 }),
    code: fc.constantFrom('L60711M', 'L60711S', 'L60711N'),
  }),
  fc.record({ kind: fc.constant('close' as const), step: fc.integer({ min: -20, max: 60 }) }),
);
type Doing = typeof doing extends fc.Arbitrary<infer One> ? One : never;

/** What a run is, in ten lines: a count that only grows, codes from positions on, and an end. */
class Model {
  count = 0;
  closed = false;
  readonly codes: { code: string; from: number }[] = [];

  takes({ kind, step }: Doing, code: string | null): boolean {
    const position = Math.max(0, this.count + step);
    if (this.closed || position < this.count || (kind === 'code' && this.codes.at(-1)?.code === code)) return false;
    this.count = position;
    if (code !== null) this.codes.push({ code, from: position });
    if (kind === 'close') this.closed = true;
    return true;
  }

  /** Ranges of the codes, those without a pack left out. */
  ranges(): unknown[] {
    const end = this.closed ? this.count : null;
    return this.codes
      .map(({ code, from }, place) => ({ code, fromCount: from, toCount: this.codes[place + 1]?.from ?? end }))
      .filter(({ fromCount, toCount }) => fromCount !== toCount);
  }
}

describe('the life of a packing run', () => {
  let house: TestHouse;
  let plant: Plant;
  let from: ReadFrom;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    from = house.app.get<ReadFrom>(READER, { strict: false });
  });

  afterAll(() => house.close());

  async function happens(runId: string, one: Doing, packCount: number): Promise<void> {
    const asked = asking(plant.actor);
    if (one.kind === 'count') await house.get(CountPacks).execute(asked, runId, { packCount });
    else if (one.kind === 'code') await house.get(ChangeCode).execute(asked, runId, { code: one.code, packCount });
    else await house.get(CloseRun).execute(asked, runId, { packCount, loosePackCount: 0 });
  }

  it('is what a few lines say, whatever is entered and in whatever order', async () => {
    const attempt = fc.asyncProperty(fc.array(doing, { minLength: 1, maxLength: 12 }), async (doings) => {
      const { runId } = await aRun(house, plant);
      const model = new Model();
      for (const one of doings) {
        house.clock.pass(1);
        const packCount = Math.max(0, model.count + one.step);
        const isTaken = model.takes(one, one.kind === 'code' ? one.code : null);
        const outcome = await happens(runId, one, packCount).then(
          () => 'taken',
          (error: unknown) => (error as { name: string }).name,
        );
        expect(outcome).toBe(isTaken ? 'taken' : 'Refusal');
      }
      expect(await runOf(from, runId)).toMatchObject({ packCount: model.count });
      expect(await lotRanges(from, runId)).toMatchObject(model.ranges());
      expect((await countsOf(from, [runId])).at(-1)?.packCount).toBe(model.count);
      expect((await openRunOfLine(from, plant.lineIds[0]))?.id ?? null).toBe(model.closed ? null : runId);
      expect(await house.get(UnitOfWork).run((tx) => rebuildRunStates(tx))).toBe(0);
    });
    const closeWhatIsLeft = fc.afterEach(async () => {
      const left = await openRunOfLine(from, plant.lineIds[0]);
      if (left !== null) await happens(left.id, { kind: 'close', step: 0 }, left.packCount);
      house.clock.pass(1);
    });
    await fc.assert(attempt, { numRuns: 15, seed: 60_711, plugins: [closeWhatIsLeft] });
  }, 60_000);
});
