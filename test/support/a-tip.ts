import { Decision } from '../../src/disposition/decision.entity.js';
import type { ClosedBag } from '../../src/drying/close-bag.js';
import { StartRun, type StartRunAnswer } from '../../src/hopper/start-run.js';
import { TipBag, type TipAnswer } from '../../src/hopper/tip-bag.js';
import { ProveEmpty, type ProvenEmptyAnswer } from '../../src/hopper/prove-empty.js';
import { UnitOfWork } from '../../src/platform/database/unit-of-work.js';
import { SystemIds } from '../../src/platform/ids.js';
import { JobRunner } from '../../src/platform/jobs/job-runner.js';
import { PackFormat } from '../../src/plant/pack-format.entity.js';
import { PackFormatGrade } from '../../src/plant/pack-format-grade.entity.js';
import { RuleSet } from '../../src/plant/rule-set.entity.js';
import { Scale } from '../../src/plant/scale.entity.js';
import { ScaleCheck } from '../../src/plant/scale-check.entity.js';
import { aBag, type BagWishes } from './a-bag.js';
import { aPerson } from './a-person.js';
import type { Plant } from './a-plant.js';
import { asking, type TestHouse } from './house.js';

const ids = new SystemIds();

/** A full bag of a tonne that quality has released. */
export async function aReleasedBag(house: TestHouse, plant: Plant, wishes: BagWishes = {}): Promise<ClosedBag> {
  const bag = await aBag(house, plant, wishes);
  await decided(house, plant, bag.id, 'released');
  return bag;
}

/** Quality has decided on a bag, past the rules of its decision. */
export async function decided(
  house: TestHouse,
  plant: Plant,
  bagId: string,
  verdict: Decision['verdict'],
): Promise<void> {
  await house.get(UnitOfWork).run(async (tx) => {
    await tx.insert(Decision, {
      ...{ id: ids.next(), siteId: plant.siteId, subjectKind: 'bulk-bag', subjectId: bagId, verdict },
      ...{ reason: null, decidedAt: house.clock.now(), voidedBy: null },
    });
  });
}

/** What a test may want otherwise of a tip; all else is a whole bag, scanned and off now. */
export interface TipWishes {
  readonly hopperId?: string;
  readonly openedAt?: string | null;
  readonly isOff?: boolean;
  readonly happened?: boolean;
}

/** Tips a bag over the plant's hopper: whole, and off at once. */
export function aTip(house: TestHouse, plant: Plant, bag: string, wishes: TipWishes = {}): Promise<TipAnswer> {
  return house.get(TipBag).execute(asking(plant.actor), {
    bag,
    hopperId: wishes.hopperId ?? plant.hopperId,
    openedAt: wishes.openedAt ?? null,
    isOff: wishes.isOff ?? true,
    happened: wishes.happened ?? false,
    reason: 'test',
  });
}

/** A released bag of so many grams, tipped now. */
export async function aTippedBag(
  house: TestHouse,
  plant: Plant,
  wishes: BagWishes & TipWishes = {},
): Promise<{ readonly bag: ClosedBag; readonly tip: TipAnswer }> {
  const bag = await aReleasedBag(house, plant, wishes);
  return { bag, tip: await aTip(house, plant, bag.id, wishes) };
}

/** A run of the first format on a line, started now by the hopper's own command. */
export function aStartedRun(
  house: TestHouse,
  plant: Plant,
  wishes: { readonly lineId?: string; readonly formatId?: string; readonly happened?: boolean } = {},
): Promise<StartRunAnswer> {
  return house.get(StartRun).execute(asking(plant.actor), {
    lineId: wishes.lineId ?? plant.lineIds[0],
    formatId: wishes.formatId ?? plant.formatId,
    happened: wishes.happened ?? false,
  });
}

/** What a test may want otherwise of a proven empty; all else is a clean one, now, seen by a second person. */
export interface EmptyWishes {
  readonly residueGrams?: number;
  readonly residueUpperGrams?: number;
  readonly happened?: boolean;
  readonly counts?: { readonly run: string; readonly packCount: number }[];
}

export async function aProvenEmpty(
  house: TestHouse,
  plant: Plant,
  wishes: EmptyWishes = {},
): Promise<ProvenEmptyAnswer> {
  const { personId } = await aPerson(house, plant.siteId);
  return house.get(ProveEmpty).execute(asking(plant.actor), plant.hopperId, {
    isFlowStopped: true,
    how: 'hatch opened, lamp',
    residueGrams: wishes.residueGrams ?? 0,
    residueUpperGrams: wishes.residueUpperGrams ?? null,
    secondPersonId: personId,
    happened: wishes.happened ?? false,
    counts: wishes.counts ?? null,
  });
}

/** A plant in which everything is exact: clocks, people, scale and packs. Gives the scale. */
export async function withoutDoubt(
  house: TestHouse,
  plant: Plant,
): Promise<{ readonly scaleId: string; readonly formatId: string }> {
  const [scaleId, formatId] = [ids.next(), ids.next()];
  const none = { scannedEarlierMinutes: 0, statedEarlierMinutes: 0, laterMinutes: 0, handCountMinutes: 0 };
  const { siteId } = plant;
  await house.get(UnitOfWork).run(async (tx) => {
    const scale = { intervalMilligrams: 1000, maximumPermissibleErrorMilligrams: 0, checkEveryHours: 720 };
    await tx.insert(Scale, { id: scaleId, siteId, code: 'EXACT', name: 'Exact scale', ...scale });
    const check = { checkedAt: '2026-03-12T05:00:00.000Z', deviationMilligrams: 0, passed: true, personId: null };
    await tx.insert(ScaleCheck, { id: ids.next(), scaleId, ...check, voidedBy: null });
    const limits = { nominalGrams: 2000, assumedLowerMilligrams: 2_000_000, assumedUpperMilligrams: 2_000_000 };
    await tx.insert(PackFormat, {
      ...{ id: formatId, siteId, code: 'EXACT-2KG', name: 'Exactly 2 kg', gtin: '09520123000301', ...limits },
      ...{ packTareGrams: 12, packsPerPallet: 480, palletTareGrams: 25_000, codePattern: 'L{y}{ddd}{line}{shift}' },
      bestBeforeMonths: null,
    });
    await tx.insert(PackFormatGrade, { id: ids.next(), formatId, gradeId: plant.gradeId, voidedBy: null });
    const rules = { kind: 'tip-time-uncertainty', validFrom: '2025-01-01T00:00:00.000Z', rules: JSON.stringify(none) };
    await tx.insert(RuleSet, { id: ids.next(), siteId, ...rules, voidedBy: null });
  });
  return { scaleId, formatId };
}

/** Does the jobs that were left behind, such as the look at the hopper's level. */
export async function jobsDone(house: TestHouse): Promise<void> {
  await house.get(JobRunner).drain();
}
