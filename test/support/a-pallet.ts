import { changeBagState } from '../../src/drying/change-bag-state.js';
import type { ClosedBag } from '../../src/drying/close-bag.js';
import { Decision } from '../../src/disposition/decision.entity.js';
import { HopperPeriod } from '../../src/hopper/hopper-period.entity.js';
import { HopperState } from '../../src/hopper/hopper-state.entity.js';
import { Tip } from '../../src/hopper/tip.entity.js';
import { TipOff } from '../../src/hopper/tip-off.entity.js';
import { ChangeCode } from '../../src/packing/change-code.js';
import type { PalletAnswer } from '../../src/pallets/add-pallet.js';
import { BuildPallet } from '../../src/pallets/build-pallet.js';
import { shifted } from '../../src/platform/clock.js';
import { UnitOfWork } from '../../src/platform/database/unit-of-work.js';
import { SystemIds } from '../../src/platform/ids.js';
import { aBag } from './a-bag.js';
import type { Plant } from './a-plant.js';
import { aRun, packsCounted } from './a-run.js';
import { asking, type TestHouse } from './house.js';

const ids = new SystemIds();

/** What quality said of a thing; `waiting`: nothing. */
export type Said = 'waiting' | 'released' | 'rejected' | 'concession';

/** Writes a decision past the results that a release asks for. */
export async function decided(
  house: TestHouse,
  plant: Plant,
  subject: { readonly kind: 'bulk-bag' | 'lot' | 'pallet'; readonly id: string },
  verdict: Said,
): Promise<void> {
  await house.get(UnitOfWork).run((tx) =>
    tx.insert(Decision, {
      id: ids.next(),
      siteId: plant.siteId,
      subjectKind: subject.kind,
      subjectId: subject.id,
      verdict,
      reason: verdict === 'released' ? null : `test: ${verdict}`,
      decidedAt: house.clock.now(),
    }),
  );
}

/** A bag on which quality decided (released, unless said otherwise), tipped whole into the plant's hopper, past its rules. */
export async function aTippedBag(
  house: TestHouse,
  plant: Plant,
  wishes: { readonly said?: Said; readonly netGrams?: number; readonly scaleId?: string } = {},
): Promise<ClosedBag> {
  const { said = 'released', ...ofBag } = wishes;
  const bag = await aBag(house, plant, ofBag);
  if (said !== 'waiting') await decided(house, plant, { kind: 'bulk-bag', id: bag.id }, said);
  await tipped(house, plant, bag);
  house.clock.pass(10);
  return bag;
}

/** Tips a bag now, whole; opens the hopper's first period where it has none. */
export async function tipped(house: TestHouse, plant: Plant, bag: ClosedBag): Promise<void> {
  const now = house.clock.now();
  await house.get(UnitOfWork).run(async (tx) => {
    const known = await tx.findOne(HopperPeriod, { hopperId: plant.hopperId, number: 1 });
    const periodId = known?.id ?? ids.next();
    if (known === null) {
      const nothing = { previousPeriodId: null, residueLowerGrams: 0, residueUpperGrams: 0 };
      const startedAt = shifted(now, -60_000);
      await tx.insert(HopperPeriod, { id: periodId, hopperId: plant.hopperId, number: 1, startedAt, ...nothing });
      await tx.sql`INSERT INTO "hopper_state" ("hopper_id") VALUES (${plant.hopperId}) ON CONFLICT DO NOTHING`;
      await tx.update(HopperState, { hopperId: plant.hopperId }, { periodId });
    }
    const tipId = ids.next();
    await tx.insert(Tip, {
      id: tipId,
      siteId: plant.siteId,
      periodId,
      source: 'bulk-bag',
      bagId: bag.id,
      binId: null,
      netGrams: bag.netGrams,
      openedAt: now,
      identifiedBy: 'scan',
      secondPersonId: null,
      hasHappened: false,
      isLate: false,
    });
    await tx.insert(TipOff, { id: ids.next(), tipId, offAt: shifted(now, 300_000), restGrams: 0, weighingId: null });
    const gone = { status: 'empty', remainingGrams: 0, placeId: null, at: now } as const;
    await changeBagState(tx, bag.id, { status: ['full'] }, gone);
  });
}

/** What a test may want of a run whose packs are to be palletised. */
export interface PackedRunWishes {
  readonly lineId?: string;
  readonly formatId?: string;
  readonly packCount?: number;
  readonly code?: string;
}

/** A run with a code from its first pack on, and packs counted an hour later. */
export async function aPackedRun(
  house: TestHouse,
  plant: Plant,
  wishes: PackedRunWishes = {},
): Promise<{ readonly runId: string; readonly number: string; readonly lotId: string; readonly code: string }> {
  const { packCount = 480, code: typed = 'L6071A1', ...ofRun } = wishes;
  const { runId, number } = await aRun(house, plant, ofRun);
  const form = { code: typed, packCount: 0 };
  const { lotId, code } = await house.get(ChangeCode).execute(asking(plant.actor), runId, form);
  house.clock.pass(60);
  await packsCounted(house, plant, runId, packCount);
  return { runId, number, lotId, code };
}

/** A pallet of the next packs of a run, without a label. */
export async function aPallet(
  house: TestHouse,
  plant: Plant,
  wishes: { readonly run: string; readonly packCount?: number; readonly placeId?: string; readonly label?: boolean },
): Promise<PalletAnswer> {
  return house.get(BuildPallet).execute(asking(plant.actor), {
    run: wishes.run,
    packCount: wishes.packCount ?? null,
    placeId: wishes.placeId ?? null,
    label: wishes.label ?? false,
  });
}

/** Everything before it, too: a released bag tipped, a run packed from it, and its first full pallet. */
export async function aReleasedPallet(
  house: TestHouse,
  plant: Plant,
): Promise<PalletAnswer & { readonly runId: string; readonly lotId: string; readonly bag: ClosedBag }> {
  const bag = await aTippedBag(house, plant);
  const { runId, lotId } = await aPackedRun(house, plant);
  const pallet = await aPallet(house, plant, { run: runId, placeId: plant.placeIds.store });
  return { ...pallet, runId, lotId, bag };
}
