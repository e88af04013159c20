import { gramsIn, pourInto, takeMixed, type Composition } from '../plant-physics/composition.js';
import type { HopperCells } from '../plant-physics/hopper-cells.js';
import type { Random } from '../plant-physics/random.js';
import type { ShownLoad } from './act.js';
import type { HopperPlan } from './demo-plan.js';
import type { LiveBag } from './live-bag.js';
import { instantOf, shiftAt, type Minute } from './minutes.js';
import type { TruePour } from './truth-ledger.js';
import type { World } from './world.js';

/** How a tip gets into the records. */
type Way = 'as-usual' | 'late' | 'wrong-bag' | 'unreadable' | 'forgotten' | 'part';

interface Pouring {
  readonly sugar: Composition;
  readonly perMinuteGrams: number;
}

/** A bag over the hopper: what truly flows, and what is recorded of it. */
export class TipScript {
  private pouring: Pouring | null = null;
  private busyUntil: Minute = 0;
  private serial = 0;
  private unreadCount = 0;
  private readonly aside: { readonly bag: LiveBag; readonly until: Minute }[] = [];
  private readonly random: Random;

  constructor(
    private readonly world: World,
    private readonly plan: HopperPlan,
    private readonly cells: HopperCells,
  ) {
    this.random = world.random(`tips ${plan.code}`);
  }

  get isBusy(): boolean {
    return this.pouring !== null;
  }

  mayBegin(minute: Minute): boolean {
    return this.pouring === null && minute >= this.busyUntil;
  }

  /** What is still in the bag that hangs. */
  rest(): Composition {
    return this.pouring?.sugar ?? new Map<string, number>();
  }

  /** What flows within this minute. */
  step(minute: Minute): void {
    for (let first = this.aside[0]; first !== undefined && minute >= first.until; first = this.aside[0]) {
      first.bag.whereabouts = 'store';
      this.aside.shift();
    }
    if (this.pouring === null) return;
    const { sugar, perMinuteGrams } = this.pouring;
    this.cells.pour(takeMixed(sugar, Math.min(perMinuteGrams, gramsIn(sugar))));
    if (gramsIn(sugar) === 0) this.pouring = null;
  }

  /** Hangs the next bag of a grade; false when there is none. `until`: when the hopper must be empty. */
  tipNext(minute: Minute, from: readonly LiveBag[], until: Minute): boolean {
    const bag = from.find((each) => each.isOpened) ?? from[0];
    if (bag === undefined) return false;
    const neighbour = from.find((each) => each !== bag && !each.isOpened && each.verdict !== 'waiting');
    const way = this.wayOf(minute, bag, { neighbour, until });
    this.serial += 1;
    const tip = `${this.plan.code}-tip-${this.serial}`;
    const flowing = this.pourOut(minute, bag, way);
    const offAt = minute + this.plan.drainMinutes + 1;
    if (way === 'part') this.weighBack(tip, minute, { bag, offAt });
    else if (way === 'late') this.recordLate(tip, minute, { bag, offAt });
    else if (way === 'forgotten') this.recordAfterTheAccount(tip, minute, bag);
    else if (way === 'wrong-bag' && neighbour !== undefined) this.recordWrong(tip, minute, { bag, neighbour, offAt });
    else if (way === 'unreadable' && neighbour !== undefined) this.recordOneOf(tip, minute, { bag, neighbour, offAt });
    else this.recordAtOnce(tip, minute, { bag: bag.key, offAt });
    this.remember(minute, bag.key, { grams: flowing, way });
    return true;
  }

  /** A bin of rework goes back. */
  tipBin(minute: Minute, bin: string, sugar: Composition): void {
    const grams = gramsIn(sugar);
    pourInto(this.world.ledger.returned, sugar);
    this.cells.pour(sugar);
    this.serial += 1;
    const tip = `${this.plan.code}-tip-${this.serial}`;
    const openedAt = instantOf(minute);
    const by = this.world.leadAt(minute);
    this.world.diary.note(minute, by, { kind: 'tip-bin', tip, hopper: this.plan.code, bin, openedAt });
    this.world.ledger.pours.push({ bag: bin, hopper: this.plan.code, fromMinute: minute, grams, recorded: 'at-once' });
    this.busyUntil = minute + 3;
  }

  private wayOf(minute: Minute, bag: LiveBag, seen: { neighbour: LiveBag | undefined; until: Minute }): Way {
    if (bag.isOpened) return 'as-usual';
    const { incidents } = this.world;
    if (incidents.happensNow('late-scan', minute)) return 'late';
    if (incidents.happensNow('part-bag', minute)) return 'part';
    const endOfShift = shiftAt(minute).until;
    const isFoundInTime = seen.until > endOfShift + 240 && this.world.plan.until > endOfShift + 240;
    if (isFoundInTime && incidents.happensNow('skipped-tip', minute)) return 'forgotten';
    if (seen.neighbour === undefined || bag.verdict === 'waiting') return 'as-usual';
    if (incidents.happensNow('wrong-scan', minute)) return 'wrong-bag';
    return incidents.happensNow('unreadable-number', minute) ? 'unreadable' : 'as-usual';
  }

  /** What truly goes in; a little dust stays in the bag. */
  private pourOut(minute: Minute, bag: LiveBag, way: Way): number {
    const dustGrams = this.random.whole(20, 80);
    const grams =
      way === 'part' ? Math.round(bag.trueGrams * this.random.between(0.4, 0.6)) : bag.trueGrams - dustGrams;
    if (way !== 'part') this.world.ledger.lost(new Map([[bag.key, dustGrams]]));
    bag.trueGrams = way === 'part' ? bag.trueGrams - grams : 0;
    bag.whereabouts = way === 'part' ? 'store' : 'gone';
    bag.isOpened = way === 'part';
    this.pouring = {
      sugar: new Map([[bag.key, grams]]),
      perMinuteGrams: Math.ceil(grams / this.plan.drainMinutes),
    };
    this.busyUntil = minute + this.plan.drainMinutes + 3;
    return grams;
  }

  private recordAtOnce(tip: string, minute: Minute, seen: { bag: string; offAt: Minute }): void {
    const { code: hopper } = this.plan;
    const by = this.world.leadAt(minute);
    const openedAt = instantOf(minute);
    this.world.diary.note(minute, by, { kind: 'tip-bag', tip, hopper, bag: seen.bag, openedAt, lateReason: null });
    this.noteOff(tip, seen.offAt, seen.offAt);
  }

  private noteOff(tip: string, offAt: Minute, recordedAt: Minute, rest: ShownLoad | null = null): void {
    const isLate = recordedAt > offAt + 60;
    this.world.diary.note(recordedAt, this.world.leadAt(recordedAt), {
      kind: 'bag-off',
      tip,
      offAt: instantOf(offAt),
      lateReason: isLate ? forgottenReason : null,
      rest,
    });
  }

  /** Scanned twenty minutes after it was opened; the time is told to five minutes. */
  private recordLate(tip: string, minute: Minute, seen: { bag: LiveBag; offAt: Minute }): void {
    const recordedAt = minute + 20;
    this.world.diary.note(recordedAt, this.world.leadAt(recordedAt), {
      kind: 'tip-bag',
      tip,
      hopper: this.plan.code,
      bag: seen.bag.key,
      openedAt: instantOf(minute - (minute % 5)),
      lateReason: 'The scanner was at the other hopper',
    });
    this.noteOff(tip, seen.offAt, recordedAt);
  }

  /** Nobody scans it; its empty bag is found well after the account of the shift was signed. */
  private recordAfterTheAccount(tip: string, minute: Minute, bag: LiveBag): void {
    const recordedAt = shiftAt(minute).until + 100;
    this.world.diary.note(recordedAt, this.world.leadAt(recordedAt), {
      kind: 'tip-bag',
      tip,
      hopper: this.plan.code,
      bag: bag.key,
      openedAt: instantOf(minute - (minute % 5)),
      lateReason: forgottenReason,
    });
    const offAt = minute + this.plan.drainMinutes + 1;
    this.noteOff(tip, offAt, recordedAt);
  }

  private recordWrong(tip: string, minute: Minute, seen: { bag: LiveBag; neighbour: LiveBag; offAt: Minute }): void {
    this.recordAtOnce(tip, minute, { bag: seen.neighbour.key, offAt: seen.offAt });
    // Until it is corrected the house takes the other bag for empty: nobody hangs it meanwhile.
    this.setAside(seen.neighbour, seen.offAt + 3);
    const reason = 'The label of the bag beside it was scanned';
    const { diary } = this.world;
    diary.note(seen.offAt + 1, this.world.leadAt(minute), { kind: 'correct-tip', tip, bag: seen.bag.key, reason });
  }

  private recordOneOf(tip: string, minute: Minute, seen: { bag: LiveBag; neighbour: LiveBag; offAt: Minute }): void {
    const bags = [seen.neighbour.key, seen.bag.key];
    const by = this.world.leadAt(minute);
    const openedAt = instantOf(minute);
    this.world.diary.note(minute, by, { kind: 'tip-one-of', tip, hopper: this.plan.code, bags, openedAt });
    this.noteOff(tip, seen.offAt, seen.offAt);
    seen.neighbour.whereabouts = 'set-aside';
    this.unreadCount += 1;
    // Every other time the label turns up: then it is known which of them it was.
    if (this.unreadCount % 2 === 1) return;
    const reason = 'Its label was found at the hoist';
    this.world.diary.note(minute + 310, 'quality', { kind: 'settle-candidate', tip, bag: seen.bag.key, reason });
  }

  /** Tied up again, weighed and put back; the rest goes in some hours later. */
  private weighBack(tip: string, minute: Minute, seen: { bag: LiveBag; offAt: Minute }): void {
    const { bag } = seen;
    const offAt = seen.offAt + 2;
    this.setAside(bag, minute + 150);
    this.world.diary.note(minute, this.world.leadAt(minute), {
      kind: 'tip-bag',
      tip,
      hopper: this.plan.code,
      bag: bag.key,
      openedAt: instantOf(minute),
      lateReason: null,
    });
    const grossGrams = this.world.weigh('S1', bag.trueGrams + bag.tareGrams);
    this.noteOff(tip, offAt, offAt, { grossGrams, tareGrams: this.world.weigh('S1', bag.tareGrams) });
    this.busyUntil = offAt + 1;
  }

  private setAside(bag: LiveBag, until: Minute): void {
    bag.whereabouts = 'set-aside';
    this.aside.push({ bag, until });
  }

  private remember(minute: Minute, bag: string, poured: { grams: number; way: Way }): void {
    this.world.ledger.pours.push({
      bag,
      hopper: this.plan.code,
      fromMinute: minute,
      grams: poured.grams,
      recorded: recordedAs[poured.way],
    });
  }
}

const forgottenReason = 'The empty bag was found at the hoist';

const recordedAs: Readonly<Record<Way, TruePour['recorded']>> = {
  'as-usual': 'at-once',
  part: 'at-once',
  late: 'late',
  'wrong-bag': 'corrected',
  unreadable: 'one-of-several',
  forgotten: 'after-the-account',
};
