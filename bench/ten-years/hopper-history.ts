import { instantOf, type DemoShift, type Minute } from '../../src/demo/life/minutes.js';
import { BagState } from '../../src/drying/bag-state.entity.js';
import { HopperPeriod } from '../../src/hopper/hopper-period.entity.js';
import { HopperState } from '../../src/hopper/hopper-state.entity.js';
import { ProvenEmpty } from '../../src/hopper/proven-empty.entity.js';
import { TipOff } from '../../src/hopper/tip-off.entity.js';
import { Tip } from '../../src/hopper/tip.entity.js';
import type { StoredBag } from './dryer-history.js';
import type { BenchHopper, History } from './history.js';
import { RunHistory } from './run-history.js';
import type { PalletHistory } from './pallet-history.js';

/** The lead hangs the next bag when less than this is inside. */
const tipBelowGrams = 1_400_000;
const drainMinutes = 4;
/** What a period leaves behind, one time in four: it goes on into the next. Else the empty cuts the thread. */
const residueShare = 0.25;

/** One hopper and its line: periods of a shift, a day or five days, each ended by a proven empty. */
export class HopperHistory {
  private level = 0;
  private shiftsLeft = 0;
  private number = 0;
  private periodId = '';
  /** What stays inside at the end of this period, and what came from the one before. */
  private keptGrams = 0;
  private residue = { grams: 0, fromPeriodId: null as string | null };

  constructor(
    private readonly history: History,
    private readonly hopper: BenchHopper,
    private readonly store: StoredBag[],
    private readonly pallets: PalletHistory,
  ) {}

  /** Packs through one shift. */
  shift(shift: DemoShift, packsPerMinute: number): void {
    if (this.shiftsLeft === 0) this.beginPeriod(shift.from);
    const isLast = this.shiftsLeft === 1;
    const run = new RunHistory(this.history, this.hopper, shift, this.pallets);
    const stopsAt = shift.from + this.history.random.whole(120, 360);
    for (let minute = shift.from + 6; minute < shift.until - 6; minute += 1) {
      if (minute === stopsAt) run.stop(minute, 6);
      if (minute >= stopsAt && minute < stopsAt + 6) continue;
      const minutesLeft = shift.until - 6 - minute;
      this.tipIfLow(minute, isLast ? minutesLeft * packsPerMinute * 1002 : Infinity);
      this.level -= run.pack(minute, Math.min(packsPerMinute + this.history.random.whole(-1, 1), this.packsInside()));
      if (this.packsInside() === 0 && isLast && minutesLeft < 60) break;
    }
    this.level -= run.close(isLast ? 0 : 90_000);
    this.shiftsLeft -= 1;
    if (isLast) this.proveEmpty(shift.until - 2);
  }

  /** A period that goes on when history ends. */
  end(at: Minute): void {
    if (this.shiftsLeft === 0) this.beginPeriod(at);
    this.history.sink.put(HopperState, { hopperId: this.hopper.hopperId, periodId: this.periodId });
  }

  private packsInside(): number {
    const kept = this.shiftsLeft === 1 ? this.keptGrams : 0;
    return Math.max(0, Math.floor((this.level - kept) / 1002));
  }

  private beginPeriod(at: Minute): void {
    const { sink, numbers, random } = this.history;
    const drawn = random.next();
    this.shiftsLeft = drawn < 0.6 ? 1 : drawn < 0.9 ? 3 : 15;
    this.number += 1;
    this.periodId = numbers.id(at * 60_000);
    const { grams, fromPeriodId } = this.residue;
    sink.put(HopperPeriod, {
      ...{ id: this.periodId, hopperId: this.hopper.hopperId, number: this.number, startedAt: instantOf(at) },
      ...{ previousPeriodId: fromPeriodId, residueLowerGrams: 0, residueUpperGrams: grams * 2, voidedBy: null },
    });
    this.level = grams;
    this.keptGrams = random.happens(residueShare) ? random.whole(5, 40) * 1000 : 0;
  }

  private tipIfLow(minute: Minute, mostInside: number): void {
    if (this.level >= tipBelowGrams || this.level + 1_000_000 > mostInside) return;
    const [bag] = this.store;
    if (bag === undefined || bag.filledAt > minute - 24 * 60) return;
    this.store.shift();
    const { sink, numbers, plant } = this.history;
    const id = numbers.id(minute * 60_000);
    sink.put(Tip, {
      ...{ id, siteId: plant.siteId, periodId: this.periodId, source: 'bulk-bag', bagId: bag.id, binId: null },
      ...{ netGrams: bag.netGrams, openedAt: instantOf(minute, 20), identifiedBy: 'scan', secondPersonId: null },
      ...{ hasHappened: false, isLate: false, voidedBy: null },
    });
    const offAt = instantOf(minute + drainMinutes, 20);
    sink.put(TipOff, {
      ...{ id: numbers.id((minute + drainMinutes) * 60_000), tipId: id, offAt, restGrams: 0, weighingId: null },
      voidedBy: null,
    });
    const { hopperId } = this.hopper;
    sink.put(BagState, { bagId: bag.id, status: 'empty', remainingGrams: 0, placeId: hopperId, changedAt: offAt });
    this.level += bag.netGrams;
  }

  private proveEmpty(at: Minute): void {
    const { sink, numbers } = this.history;
    const grams = this.keptGrams;
    sink.put(ProvenEmpty, {
      ...{ id: numbers.id(at * 60_000), periodId: this.periodId, how: 'opened and looked in', residueGrams: grams },
      ...{ residueUpperGrams: grams * 2, secondPersonId: 'bench', provenAt: instantOf(at), voidedBy: null },
    });
    this.residue = { grams, fromPeriodId: grams === 0 ? null : this.periodId };
  }
}
