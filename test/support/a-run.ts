import { UnitOfWork } from '../../src/platform/database/unit-of-work.js';
import { SystemIds } from '../../src/platform/ids.js';
import { CountPacks } from '../../src/packing/count-packs.js';
import { openRun } from '../../src/packing/open-run.js';
import { Scale } from '../../src/plant/scale.entity.js';
import { ScaleCheck } from '../../src/plant/scale-check.entity.js';
import type { Plant } from './a-plant.js';
import { asking, type TestHouse } from './house.js';

/** What a test may want otherwise of a run; all else is a run of the first format on the first line, open since now. */
export interface RunWishes {
  readonly lineId?: string;
  readonly formatId?: string;
  readonly startedAt?: string;
  /** Counted so far, now. */
  readonly packCount?: number;
}

export interface RunOpened {
  readonly runId: string;
  readonly number: string;
}

const ids = new SystemIds();

/** Opens a run past the hopper's rules. */
export async function aRun(house: TestHouse, plant: Plant, wishes: RunWishes = {}): Promise<RunOpened> {
  const runId = ids.next();
  const { number } = await house.get(UnitOfWork).run((tx) =>
    openRun(tx, {
      id: runId,
      siteId: plant.siteId,
      lineId: wishes.lineId ?? plant.lineIds[0],
      formatId: wishes.formatId ?? plant.formatId,
      startedAt: wishes.startedAt ?? house.clock.now(),
      countId: ids.next(),
    }),
  );
  if (wishes.packCount !== undefined) await packsCounted(house, plant, runId, wishes.packCount);
  return { runId, number };
}

/** Counts a run's packs by hand, now. */
export async function packsCounted(house: TestHouse, plant: Plant, runId: string, packCount: number): Promise<void> {
  await house.get(CountPacks).execute(asking(plant.actor), runId, { packCount });
}

/** A bench scale for packs: 1 g interval, checked and in date. */
export async function aPackScale(house: TestHouse, plant: Plant, code = 'P1'): Promise<string> {
  const id = ids.next();
  await house.get(UnitOfWork).run(async (tx) => {
    await tx.insert(Scale, {
      id,
      siteId: plant.siteId,
      code,
      name: `Pack scale ${code}`,
      intervalMilligrams: 1000,
      maximumPermissibleErrorMilligrams: 1000,
      checkEveryHours: 24,
    });
    await tx.insert(ScaleCheck, {
      id: ids.next(),
      scaleId: id,
      checkedAt: '2026-03-12T05:00:00.000Z',
      deviationMilligrams: 0,
      passed: true,
      personId: null,
      voidedBy: null,
    });
  });
  return id;
}
