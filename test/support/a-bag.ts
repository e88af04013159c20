import { EndDryerRun } from '../../src/drying/end-dryer-run.js';
import { FillBag } from '../../src/drying/fill-bag.js';
import type { ClosedBag } from '../../src/drying/close-bag.js';
import { lastRunOfDryer } from '../../src/drying/dryer-runs.js';
import { StartDryerRun } from '../../src/drying/start-dryer-run.js';
import { shifted } from '../../src/platform/clock.js';
import { READER, type ReadFrom } from '../../src/platform/database/reading.js';
import { Decide } from '../../src/disposition/decide.js';
import { ReportResult } from '../../src/laboratory/report-result.js';
import { TakeSample } from '../../src/laboratory/take-sample.js';
import { colourMethod, moistureMethod, type Plant } from './a-plant.js';
import { asking, type TestHouse } from './house.js';

/** What a test may want of a bag; all else is a bag that can be tipped once it is released. */
export interface BagWishes {
  readonly gradeId?: string;
  readonly netGrams?: number;
  readonly tareGrams?: number;
  readonly isPresetTare?: boolean;
  readonly scaleId?: string;
  readonly safeLoadGrams?: number;
  readonly startedAt?: string;
  readonly filledAt?: string;
  readonly placeId?: string;
  readonly linerLot?: string;
}

/** The reader of a house, for looking at what a command left behind. */
export function readerOf(house: TestHouse): ReadFrom {
  return house.app.get<ReadFrom>(READER, { strict: false });
}

/**
 * A dryer run that makes the grade now. One that is open already is taken; one of another grade is ended a minute
 * later than now, so that bags filled just now stay within it.
 */
export async function aDryerRun(
  house: TestHouse,
  plant: Plant,
  wishes: { readonly gradeId?: string; readonly startedAt?: string } = {},
): Promise<{ readonly id: string; readonly number: string }> {
  const gradeId = wishes.gradeId ?? plant.gradeId;
  const last = await lastRunOfDryer(readerOf(house), plant.dryerId);
  if (last !== null && last.endedAt === null) {
    if (last.gradeId === gradeId) return { id: last.id, number: last.number };
    house.clock.pass(1);
    await house.get(EndDryerRun).execute(asking(plant.actor), { run: last.number });
  }
  const startedAt = wishes.startedAt ?? (last === null ? shifted(house.clock.now(), -59 * 60_000) : house.clock.now());
  return house.get(StartDryerRun).execute(asking(plant.actor), {
    dryerId: plant.dryerId,
    gradeId,
    startedAt,
    reason: 'test',
  });
}

/** A full bag of a tonne from the dryer, filled just now unless a time is given. */
export async function aBag(house: TestHouse, plant: Plant, wishes: BagWishes = {}): Promise<ClosedBag> {
  const run = await aDryerRun(house, plant, wishes.gradeId === undefined ? {} : { gradeId: wishes.gradeId });
  const tareGrams = wishes.tareGrams ?? 1_800;
  return house.get(FillBag).execute(asking(plant.actor), {
    run: run.number,
    safeLoadGrams: wishes.safeLoadGrams ?? 1_250_000,
    linerLot: wishes.linerLot ?? null,
    startedAt: wishes.startedAt ?? null,
    grossGrams: (wishes.netGrams ?? 1_000_000) + tareGrams,
    tareGrams,
    isPresetTare: wishes.isPresetTare ?? true,
    scaleId: wishes.scaleId ?? plant.scaleId,
    filledAt: wishes.filledAt ?? null,
    placeId: wishes.placeId ?? null,
    reason: 'test',
  });
}

/** Figures of a sample of a bag; all else is well within the grades of the plant. */
export interface ResultWishes {
  readonly moisturePercent?: string;
  readonly colourIu?: string;
}

/** A sample of this bag alone, with moisture and colour reported. */
export async function someResults(
  house: TestHouse,
  plant: Plant,
  bag: { readonly number: string },
  wishes: ResultWishes = {},
): Promise<{ readonly id: string; readonly number: string }> {
  const sample = await house.get(TakeSample).execute(asking(plant.actor), { standsFor: 'bag', bag: bag.number });
  const figures = [
    { property: 'moisture-percent', method: moistureMethod, amount: wishes.moisturePercent ?? '0.035' },
    { property: 'colour-iu', method: colourMethod, amount: wishes.colourIu ?? '28' },
  ];
  for (const figure of figures) {
    await house.get(ReportResult).execute(asking(plant.actor), { sample: sample.number, ...figure });
  }
  return sample;
}

/** A full bag that may be tipped: its results are in and within, and quality has released it. */
export async function aReleasedBag(house: TestHouse, plant: Plant, wishes: BagWishes = {}): Promise<ClosedBag> {
  const bag = await aBag(house, plant, wishes);
  await someResults(house, plant, bag);
  const release = { kind: 'bulk-bag', subject: bag.number, verdict: 'released' } as const;
  await house.get(Decide).execute(asking(plant.actor), release);
  return bag;
}
