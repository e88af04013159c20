import { BagState } from '../../src/drying/bag-state.entity.js';
import { BagWeighing } from '../../src/drying/bag-weighing.entity.js';
import { BulkBag } from '../../src/drying/bulk-bag.entity.js';
import { MeanNet } from '../../src/fill-weight/mean-net.entity.js';
import { HopperPeriod } from '../../src/hopper/hopper-period.entity.js';
import { LevelSeen } from '../../src/hopper/level-seen.entity.js';
import { ProvenEmpty } from '../../src/hopper/proven-empty.entity.js';
import { ReworkBin } from '../../src/hopper/rework-bin.entity.js';
import { TipCandidate } from '../../src/hopper/tip-candidate.entity.js';
import { TipOff } from '../../src/hopper/tip-off.entity.js';
import { Tip } from '../../src/hopper/tip.entity.js';
import { FilmLot } from '../../src/packing/film-lot.entity.js';
import { FilmUse } from '../../src/packing/film-use.entity.js';
import { LooseCount } from '../../src/packing/loose-count.entity.js';
import { PackCount } from '../../src/packing/pack-count.entity.js';
import { PackingRunClose } from '../../src/packing/packing-run-close.entity.js';
import { Removal } from '../../src/packing/removal.entity.js';
import { canonicalText } from '../../src/platform/canonical-text.js';
import { shifted } from '../../src/platform/clock.js';
import { UnitOfWork, type Tx } from '../../src/platform/database/unit-of-work.js';
import { SystemIds } from '../../src/platform/ids.js';
import { aPlant, type Plant } from './a-plant.js';
import { aPackScale, aRun } from './a-run.js';
import type { TestHouse } from './house.js';

const ids = new SystemIds();
let bagCount = 0;
let shiftCount = 0;

/** The early shift of 12 March 2026 in the plant's time. */
export const earlyShift = { fromAt: '2026-03-12T05:00:00.000Z', untilAt: '2026-03-12T13:00:00.000Z' };

/** A time of that day, UTC. */
export const onThatDay = (time: string): string => `2026-03-12T${time}:00.000Z`;

/** The bags of the shift, in the order of their tips. */
export const bagNets: readonly number[] = [996_500, 1_002_000, 998_000, 1_004_500, 999_000];

export interface ShiftOfTwoLines {
  readonly plant: Plant;
  readonly records: ShiftRecords;
  readonly runIds: readonly [string, string];
  readonly tips: readonly { tipId: string; bagId: string; number: string; weighingId: string }[];
}

export interface ShiftWishes {
  /** The second bag was tipped and nobody recorded it. */
  readonly skippedTip?: boolean;
  /** What was seen in the hopper at the end; null: nobody looked. */
  readonly closing?: readonly [number, number] | null;
}

/**
 * A plant of its own with one shift: two lines on one hopper, five bags, one of them weighed back, line 1 with a hand
 * sample and line 2 without; rejects weighed, samples counted, sweepings weighed. It adds up but for 1296 g.
 */
export async function aShiftOfTwoLines(
  house: TestHouse,
  { skippedTip = false, closing = [396_000, 398_000] }: ShiftWishes = {},
): Promise<ShiftOfTwoLines> {
  const at = onThatDay;
  house.clock.set(at('14:00'));
  shiftCount += 1;
  const plant = await aPlant(house, { siteCode: `AQ${shiftCount}` });
  const records = new ShiftRecords(house, plant);
  const { runId: first } = await aRun(house, plant, { startedAt: at('05:00') });
  const { runId: second } = await aRun(house, plant, { startedAt: at('05:02'), lineId: plant.lineIds[1] });
  const packScaleId = await aPackScale(house, plant);
  const tips: ShiftOfTwoLines['tips'][number][] = [];
  await records.together(async () => {
    await records.period(at('04:00'));
    await records.level(at('05:02'), 199_000, 201_000);
    for (const [place, netGrams] of bagNets.entries()) {
      if (skippedTip && place === 1) continue;
      const restGrams = place === 4 ? 150_000 : 0;
      tips.push(await records.tip({ netGrams, openedAt: at(`${String(6 + place).padStart(2, '0')}:10`), restGrams }));
    }
    await records.sample(first, [20_010, 20_030, 19_990, 20_010], packScaleId);
    await packsOfShift(records, [first, second]);
    await removalsOfShift(records, first);
    if (closing !== null) await records.level(at('12:58'), ...closing);
  });
  return { plant, records, runIds: [first, second], tips };
}

async function packsOfShift(records: ShiftRecords, [first, second]: readonly [string, string]): Promise<void> {
  const at = onThatDay;
  await records.count(first, at('05:02'), 10);
  await records.count(first, at('12:58'), 1510);
  await records.count(second, at('12:58'), 800);
  await records.count(first, at('13:10'), 1600);
  await records.count(second, at('13:10'), 860);
  await records.loose(first, at('12:58'), 46);
}

async function removalsOfShift(records: ShiftRecords, runId: string): Promise<void> {
  const at = onThatDay;
  await records.removal({ kind: 'reject', grams: 30_200, removedAt: at('12:59'), runId });
  const counted = { packCount: 4, scaleId: null, runId, fate: 'retained' as const };
  await records.removal({ kind: 'sample', grams: 8000, removedAt: at('09:00'), ...counted });
  await records.removal({ kind: 'sweepings', grams: 12_000, removedAt: at('12:40') });
}

/** A bag tipped over the plant's hopper. */
export interface TipWishes {
  readonly netGrams?: number;
  readonly openedAt: string;
  /** Null: the bag hangs still; absent: off seven minutes later. */
  readonly offAt?: string | null;
  /** Weighed back. */
  readonly restGrams?: number;
}

/** What a shift left in the records, put there past the commands: only what an account reads. */
export class ShiftRecords {
  private periodId: string | null = null;
  private tx: Tx | null = null;

  constructor(
    private readonly house: TestHouse,
    private readonly plant: Plant,
  ) {}

  /** Writes all that `work` records in one unit: a fraction of the time. */
  async together(work: () => Promise<void>): Promise<void> {
    await this.house.get(UnitOfWork).run(async (tx) => {
      this.tx = tx;
      await work();
    });
    this.tx = null;
  }

  /** Begins the next hopper period. Everything recorded from here on belongs to it. */
  async period(startedAt: string, residueGrams = 0): Promise<string> {
    const [previousPeriodId, id] = [residueGrams > 0 ? this.periodId : null, ids.next()];
    const { hopperId } = this.plant;
    await this.write(async (tx) => {
      const number = (await tx.sql`SELECT "id" FROM "hopper_period" WHERE "hopper_id" = ${hopperId}`).length + 1;
      const residue = { residueLowerGrams: residueGrams, residueUpperGrams: residueGrams };
      await tx.insert(HopperPeriod, { id, hopperId, number, startedAt, previousPeriodId, ...residue });
    });
    this.periodId = id;
    return id;
  }

  async level(seenAt: string, lowerGrams: number, upperGrams = lowerGrams): Promise<string> {
    const id = ids.next();
    const level = { how: 'probe' as const, lowerGrams, upperGrams, seenAt, isLate: false };
    await this.write((tx) => tx.insert(LevelSeen, { id, periodId: this.currentPeriod(), ...level }));
    return id;
  }

  async provenEmpty(provenAt: string, residueGrams = 0, residueUpperGrams = residueGrams): Promise<string> {
    const id = ids.next();
    const proof = {
      how: 'opened and looked in',
      residueGrams,
      residueUpperGrams,
      secondPersonId: ids.next(),
      provenAt,
    };
    await this.write((tx) => tx.insert(ProvenEmpty, { id, periodId: this.currentPeriod(), ...proof }));
    return id;
  }

  /** A bag of a round tonne, whole, off after seven minutes, unless wished otherwise. */
  async tip(wishes: TipWishes): Promise<{ tipId: string; bagId: string; number: string; weighingId: string }> {
    const { openedAt, netGrams = 1_000_000, offAt = shifted(openedAt, 7 * 60_000), restGrams = 0 } = wishes;
    const bag = await this.bag(netGrams, shifted(openedAt, -86_400_000));
    const tipId = ids.next();
    await this.write(async (tx) => {
      await tx.insert(Tip, { id: tipId, ...this.tipOf(netGrams, openedAt), source: 'bulk-bag', bagId: bag.bagId });
      if (offAt === null) return;
      const weighingId =
        restGrams > 0 ? await this.weigh(tx, { bagId: bag.bagId, netGrams: restGrams, weighedAt: offAt }) : null;
      await tx.insert(TipOff, { id: ids.next(), tipId, offAt, restGrams, weighingId });
    });
    return { tipId, ...bag };
  }

  /** A tip whose bag's number could not be read. */
  async tipOfOneOf(bagIds: readonly string[], openedAt: string, netGrams: number): Promise<string> {
    const tipId = ids.next();
    await this.write(async (tx) => {
      await tx.insert(Tip, { id: tipId, ...this.tipOf(netGrams, openedAt), source: 'one-of-several' });
      for (const bagId of bagIds) await tx.insert(TipCandidate, { id: ids.next(), tipId, bagId });
      const off = { id: ids.next(), tipId, offAt: shifted(openedAt, 420_000), restGrams: 0, weighingId: null };
      await tx.insert(TipOff, off);
    });
    return tipId;
  }

  /** A closed rework bin; tipped where a time is given. */
  async reworkBin(netGrams: number, closedAt: string, openedAt: string | null): Promise<string> {
    const binId = ids.next();
    bagCount += 1;
    const { siteId, scaleId } = this.plant;
    await this.write(async (tx) => {
      const bin = { number: `RW-${bagCount}`, content: 'weight-rejects' as const, netGrams, scaleId, closedAt };
      await tx.insert(ReworkBin, { id: binId, siteId, ...bin });
      if (openedAt === null) return;
      await tx.insert(Tip, { id: ids.next(), ...this.tipOf(netGrams, openedAt), source: 'rework-bin', binId });
    });
    return binId;
  }

  async bag(netGrams: number, weighedAt: string): Promise<{ bagId: string; number: string; weighingId: string }> {
    const bagId = ids.next();
    bagCount += 1;
    const number = String(4000 + bagCount);
    const { siteId, gradeId } = this.plant;
    const label = { number, sscc: `9952012300${String(bagCount).padStart(8, '0')}`, intendedGradeId: gradeId };
    const weighingId = await this.write(async (tx) => {
      const bag = { origin: 'opening-stock' as const, safeLoadGrams: 1_250_000, fillStartedAt: weighedAt };
      await tx.insert(BulkBag, { id: bagId, siteId, ...label, ...bag });
      const state = { status: 'empty' as const, remainingGrams: 0, placeId: null, changedAt: weighedAt };
      await tx.insert(BagState, { bagId, ...state });
      return this.weigh(tx, { bagId, netGrams, weighedAt });
    });
    return { bagId, number, weighingId };
  }

  async count(runId: string, countedAt: string, packCount: number, occasion: PackCount['occasion'] = 'minute') {
    await this.write((tx) => tx.insert(PackCount, { id: ids.next(), runId, packCount, countedAt, occasion }));
  }

  async loose(runId: string, countedAt: string, packCount: number): Promise<void> {
    await this.write((tx) => tx.insert(LooseCount, { id: ids.next(), runId, packCount, countedAt }));
  }

  async film(runId: string, code: string, firstPack: number): Promise<void> {
    const filmLotId = ids.next();
    await this.write(async (tx) => {
      const lot = { code, supplierCode: 'FS-02', kind: 'film' as const };
      await tx.insert(FilmLot, { id: filmLotId, siteId: this.plant.siteId, ...lot });
      await tx.insert(FilmUse, { id: ids.next(), runId, filmLotId, firstPack, fittedAt: this.house.clock.now() });
    });
  }

  async close(runId: string, closedAt: string, packCount: number): Promise<void> {
    await this.write((tx) => tx.insert(PackingRunClose, { id: ids.next(), runId, packCount, closedAt }));
  }

  /** A hand sample on the plant's scale, of these nets. */
  async sample(runId: string, netDecigrams: readonly number[], scaleId: string): Promise<void> {
    const meanMilligrams = Math.round((netDecigrams.reduce((sum, net) => sum + net, 0) / netDecigrams.length) * 100);
    await this.write((tx) =>
      tx.insert(MeanNet, {
        id: ids.next(),
        runId,
        scaleId,
        samplePackCount: netDecigrams.length,
        meanMilligrams,
        lowerMilligrams: meanMilligrams - 5000,
        upperMilligrams: meanMilligrams + 5000,
        netDecigrams: canonicalText([...netDecigrams]),
        weighedAt: this.house.clock.now(),
      }),
    );
  }

  async removal(wishes: Pick<Removal, 'kind' | 'grams' | 'removedAt'> & Partial<Removal>): Promise<string> {
    const id = ids.next();
    const { siteId, hopperId, scaleId } = this.plant;
    const usual = { runId: null, lineId: null, packCount: null, scaleId, reason: 'other', fate: 'waste' as const };
    await this.write((tx) => tx.insert(Removal, { id, siteId, hopperId, ...usual, ...wishes }));
    return id;
  }

  private tipOf(netGrams: number, openedAt: string) {
    const { siteId } = this.plant;
    const seen = { identifiedBy: 'scan' as const, secondPersonId: null, hasHappened: false, isLate: false };
    return { siteId, periodId: this.currentPeriod(), bagId: null, binId: null, netGrams, openedAt, ...seen };
  }

  private async weigh(
    tx: Tx,
    weighing: { readonly bagId: string; readonly netGrams: number; readonly weighedAt: string },
  ): Promise<string> {
    const id = ids.next();
    await tx.insert(BagWeighing, {
      id,
      ...weighing,
      occasion: weighing.netGrams < 500_000 ? 'weighed-back' : 'filled',
      grossGrams: weighing.netGrams + 2000,
      tareGrams: 2000,
      isPresetTare: false,
      scaleId: this.plant.scaleId,
      isDoubtful: false,
      personId: null,
    });
    return id;
  }

  private currentPeriod(): string {
    if (this.periodId === null) throw new Error('no hopper period has begun');
    return this.periodId;
  }

  private write<Answer>(work: (tx: Tx) => Promise<Answer>): Promise<Answer> {
    return this.tx === null ? this.house.get(UnitOfWork).run(work) : work(this.tx);
  }
}
