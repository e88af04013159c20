import { isWithin, type LiveBag } from './live-bag.js';
import { minuteOfLocal, type Minute } from './minutes.js';
import type { World } from './world.js';

const roundsAt = ['07:40', '11:30', '15:30', '19:40'];

/** The quality officer's rounds: four a day, none at night. Decides on every bag whose results are in. */
export class QualityOffice {
  private held: { readonly bag: LiveBag; readonly hold: string; rounds: number } | null = null;
  private holdCount = 0;
  private hasConcession = false;
  private readonly rounds: ReadonlySet<Minute>;

  constructor(private readonly world: World) {
    const days = new Set(world.plan.shifts.map(({ productionOn }) => productionOn));
    this.rounds = new Set([...days].flatMap((day) => roundsAt.map((time) => minuteOfLocal(day, time))));
  }

  step(minute: Minute): void {
    if (this.world.incidents.happensNow('held-bag', minute)) this.holdBag(minute);
    if (!this.rounds.has(minute)) return;
    this.lookAtHold(minute);
    this.decide(minute);
    this.world.store.forget();
  }

  private decide(minute: Minute): void {
    const known = this.world.store.bags.filter(
      (bag) => bag.verdict === 'waiting' && bag.resultsKnownAt <= minute && !bag.isHeld,
    );
    for (const bag of known.filter((each) => !isWithin(each, each.grade))) this.decideOnPoor(minute, bag);
    const good = known.filter((bag) => bag.verdict === 'waiting' && isWithin(bag, bag.grade));
    if (good.length === 0) return;
    this.world.diary.note(minute, 'quality', { kind: 'release-bags', bags: good.map(({ key }) => key) });
    for (const bag of good) bag.verdict = 'released';
  }

  /** Too wet: rejected. Too dark: a lower grade; once the customer took one as it was. */
  private decideOnPoor(minute: Minute, bag: LiveBag): void {
    const { diary } = this.world;
    if (bag.moisturePercent > 0.06 || !isWithin(bag, 'IND')) {
      diary.note(minute, 'quality', { kind: 'reject-bag', bag: bag.key, reason: 'Too wet; goes back to be dissolved' });
      Object.assign(bag, { verdict: 'rejected', whereabouts: 'set-aside' });
      return;
    }
    const isTipped = bag.whereabouts === 'gone';
    if (isTipped || (bag.grade === 'WS2' && !this.hasConcession)) {
      this.hasConcession ||= !isTipped;
      diary.note(minute, 'quality', {
        kind: 'concede-bag',
        bag: bag.key,
        reason: 'Colour a little high; agreed with the customers of the week',
      });
      bag.verdict = 'concession';
      return;
    }
    bag.grade = bag.grade === 'WS1' && isWithin(bag, 'WS2') ? 'WS2' : 'IND';
    diary.note(minute, 'quality', { kind: 'downgrade-bag', bag: bag.key, grade: bag.grade, reason: 'Colour' });
  }

  private holdBag(minute: Minute): void {
    const bag = this.world.store.bags.find((each) => each.whereabouts === 'store' && each.verdict === 'released');
    if (bag === undefined || this.held !== null) return;
    this.holdCount += 1;
    this.held = { bag, hold: `hold-${this.holdCount}`, rounds: 0 };
    bag.isHeld = true;
    const reason = 'The liner is torn at the spout';
    const { hold } = this.held;
    this.world.diary.note(minute, this.world.leadAt(minute), { kind: 'hold-bag', hold, bag: bag.key, reason });
  }

  /** Classed on the next round; lifted two rounds later, since nothing was found. */
  private lookAtHold(minute: Minute): void {
    if (this.held === null) return;
    const { hold, bag } = this.held;
    this.held.rounds += 1;
    if (this.held.rounds === 1) {
      const reason = 'Torn outside only';
      this.world.diary.note(minute, 'quality', { kind: 'class-hold', hold, hazard: 'quality', reason });
    }
    if (this.held.rounds < 3) return;
    this.world.diary.note(minute, 'quality', { kind: 'lift-hold', hold, reason: 'The inner liner is whole' });
    bag.isHeld = false;
    this.held = null;
  }
}
