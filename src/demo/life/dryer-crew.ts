import { DryingCourse, type DryerSetting, type DryerState } from '../plant-physics/drying-course.js';
import type { Random } from '../plant-physics/random.js';
import type { GradeCode } from './demo-plan.js';
import type { Laboratory } from './laboratory.js';
import type { LiveBag } from './live-bag.js';
import { instantOf, type Minute } from './minutes.js';
import type { World } from './world.js';

/** Moisture about 0.02 %, bags of 950 to 1 050 kg: common practice, no source. The colours are invented. */
const courses: Readonly<Record<'WS1' | 'WS2', { readonly moisturePercent: number; readonly colourIu: number }>> = {
  WS1: { moisturePercent: 0.019, colourIu: 16 },
  WS2: { moisturePercent: 0.023, colourIu: 28 },
};
const lightestGrams = 950_000;
const heaviestGrams = 1_050_000;

interface Filling {
  readonly key: string;
  readonly grade: GradeCode;
  readonly startedAt: Minute;
  readonly targetGrams: number;
  readonly states: DryerState[];
  grams: number;
}

/** One dryer and who stands at it: fills bag after bag, weighs them, takes a sample for each hour. */
export class DryerCrew {
  private readonly course: DryingCourse;
  private readonly random: Random;
  private run: { readonly key: string; readonly grade: GradeCode } | null = null;
  private filling: Filling | null = null;
  private hourBags: { readonly bag: LiveBag; readonly states: readonly DryerState[] }[] = [];
  private serial = 0;
  private wetUntil: Minute = 0;
  private darkUntil: Minute = 0;

  constructor(
    private readonly world: World,
    private readonly dryer: { readonly code: string; readonly kilogramsPerMinute: number },
    private readonly laboratory: Laboratory,
  ) {
    this.random = world.random(`dryer ${dryer.code}`);
    this.course = new DryingCourse(world.random(`course ${dryer.code}`));
  }

  /** What the dryer does from this minute to the next. */
  step(minute: Minute): void {
    if ((minute - this.world.plan.from) % 60 === 0) this.takeSample(minute);
    this.minuteUpsets(minute);
    const filling = this.filling ?? this.hangBag(minute);
    const upset = { moisture: minute < this.wetUntil ? 1 : 0, colour: minute < this.darkUntil ? 1 : 0 };
    const state = this.course.next(this.setting(filling.grade), upset);
    filling.states.push(state);
    filling.grams += Math.round(state.kilogramsPerMinute * 1000);
    if (filling.grams >= filling.targetGrams) this.closeBag(minute + 1, filling);
  }

  private setting(grade: GradeCode): DryerSetting {
    // The dryer is throttled when the store fills up, and driven when it runs low.
    const held = this.world.store.bags.length;
    const usual = Object.values(this.world.plan.openingBags).reduce((sum, count) => sum + count, 0);
    const pace = held > usual * 1.35 ? 0.92 : held < usual * 0.8 ? 1.06 : 1;
    const course = courses[grade === 'WS1' ? 'WS1' : 'WS2'];
    return { ...course, kilogramsPerMinute: this.dryer.kilogramsPerMinute * pace };
  }

  private minuteUpsets(minute: Minute): void {
    if (this.world.incidents.happensNow('wet-sugar', minute)) this.wetUntil = minute + 14;
    if (this.world.incidents.happensNow('dark-sugar', minute)) this.darkUntil = minute + 70;
  }

  private hangBag(minute: Minute): Filling {
    const grade = this.gradeAt(minute);
    if (this.run?.grade !== grade) this.changeRun(minute, grade);
    this.serial += 1;
    const key = `${this.dryer.code}-${this.serial}`;
    const targetGrams = Math.min(heaviestGrams - 5000, Math.max(lightestGrams, this.random.normal(985_000, 17_000)));
    this.filling = { key, grade, startedAt: minute, targetGrams, states: [], grams: 0 };
    const run = this.run?.key ?? '';
    this.world.diary.note(minute, 'dryer-operator', { kind: 'start-bag', bag: key, run, startedAt: instantOf(minute) });
    return this.filling;
  }

  private gradeAt(minute: Minute): GradeCode {
    const isFirst = this.world.plan.dryers[0]?.code === this.dryer.code;
    const isExtra = this.world.plan.extraWhite.some(({ from, until }) => from <= minute && minute < until);
    return isFirst && isExtra ? 'WS1' : 'WS2';
  }

  private changeRun(minute: Minute, grade: GradeCode): void {
    const { diary } = this.world;
    if (this.run !== null) diary.note(minute, 'dryer-operator', { kind: 'end-dryer-run', run: this.run.key });
    this.run = { key: `${this.dryer.code}-run-${this.serial + 1}`, grade };
    diary.note(minute, 'dryer-operator', { kind: 'start-dryer-run', run: this.run.key, dryer: this.dryer.code, grade });
  }

  private closeBag(minute: Minute, filling: Filling): void {
    const { world } = this;
    const trueGrams = Math.min(filling.grams, heaviestGrams);
    const tareGrams = Math.round(this.random.normal(2600, 120));
    const scale = world.incidents.happensNow('stale-scale', minute) ? 'S2' : 'S1';
    const shown = { grossGrams: world.weigh(scale, trueGrams + tareGrams), tareGrams: world.weigh(scale, tareGrams) };
    const isMistaken = scale === 'S1' && world.incidents.happensNow('wrong-tare', minute);
    const entered = isMistaken ? { ...shown, tareGrams: shown.tareGrams + 22_000 } : shown;
    const filledAt = instantOf(minute);
    world.diary.note(minute, 'dryer-operator', { kind: 'close-bag', bag: filling.key, scale, filledAt, ...entered });
    if (isMistaken) {
      const reason = 'The tare of a pallet was keyed in with that of the bag';
      world.diary.note(minute + 170, 'dryer-operator', {
        kind: 'correct-weighing',
        bag: filling.key,
        reason,
        ...shown,
      });
    }
    const bag = this.bagOf(minute, filling, { trueGrams, tareGrams, isDoubtful: scale === 'S2' });
    world.store.put(bag);
    this.hourBags.push({ bag, states: filling.states });
    this.sampleWetBag(minute, bag, filling.states);
    this.filling = null;
  }

  private bagOf(
    minute: Minute,
    filling: Filling,
    load: { trueGrams: number; tareGrams: number; isDoubtful: boolean },
  ): LiveBag {
    return {
      key: filling.key,
      grade: filling.grade,
      filledAt: minute,
      trueGrams: load.trueGrams,
      tareGrams: load.tareGrams,
      moisturePercent: meanOf(filling.states, ({ moisturePercent }) => moisturePercent),
      colourIu: meanOf(filling.states, ({ colourIu }) => colourIu),
      resultsKnownAt: Number.POSITIVE_INFINITY,
      verdict: 'waiting',
      isHeld: false,
      isDoubtful: load.isDoubtful,
      isOpened: false,
      whereabouts: 'store',
    };
  }

  /** Sugar that comes wet is seen: the bag gets a sample of its own, and stands aside until it is known. */
  private sampleWetBag(minute: Minute, bag: LiveBag, states: readonly DryerState[]): void {
    const moisturePercent = meanOf(states, (state) => state.moisturePercent);
    if (moisturePercent < 0.045) return;
    bag.whereabouts = 'set-aside';
    const sample = `${bag.key}-own`;
    this.world.diary.note(minute, 'dryer-operator', {
      kind: 'sample-bag',
      sample,
      bag: bag.key,
      takenAt: instantOf(minute),
    });
    this.laboratory.analyseBag(minute, sample, bag);
  }

  private takeSample(minute: Minute): void {
    const bags = this.hourBags.filter(({ bag }) => bag.filledAt < minute);
    this.hourBags = this.hourBags.filter(({ bag }) => bag.filledAt >= minute);
    if (bags.length === 0) return;
    const sample = `${this.dryer.code}-hour-${minute}`;
    const [fromAt, untilAt] = [instantOf(minute - 60), instantOf(minute)];
    this.world.diary.note(minute, 'dryer-operator', {
      kind: 'sample-hour',
      sample,
      dryer: this.dryer.code,
      fromAt,
      untilAt,
    });
    const states = bags.flatMap((filled) => filled.states);
    const found = {
      moisturePercent: meanOf(states, ({ moisturePercent }) => moisturePercent),
      colourIu: meanOf(states, ({ colourIu }) => colourIu),
    };
    this.laboratory.analyseHour(minute, sample, { ...found, bags: bags.map(({ bag }) => bag) });
  }
}

function meanOf(states: readonly DryerState[], amount: (state: DryerState) => number): number {
  return states.reduce((sum, state) => sum + amount(state), 0) / Math.max(1, states.length);
}
