import { gramsIn, type Composition } from '../../src/demo/plant-physics/composition.js';
import { seededRandom, type Random } from '../../src/demo/plant-physics/random.js';
import { trueFlowNames, trueFlows, type TrueFlow, type TrueFlowName } from './true-flows.js';

/** Seconds since the plant's first minute began. */
type Second = number;

export interface TrueTip {
  readonly bag: string;
  readonly grams: number;
  readonly openedAt: Second;
  readonly offAt: Second;
}

/** Packs of one line that left together, and what is in them. */
export interface TrueCell {
  readonly line: number;
  readonly fromCount: number;
  readonly toCount: number;
  readonly at: Second;
  readonly grams: number;
  readonly sugar: Composition;
}

/** Rejects and samples, or what was scraped out of the opened hopper. */
export interface TrueRemoval {
  readonly id: string;
  readonly at: Second;
  readonly grams: number;
}

/** From one proven empty to the next. */
export interface TruePeriod {
  readonly startsAt: Second;
  readonly endsAt: Second;
  /** What the hopper held at the start and at the end. */
  readonly startGrams: number;
  readonly endGrams: number;
  readonly tips: readonly TrueTip[];
  readonly cells: readonly TrueCell[];
  readonly removals: readonly TrueRemoval[];
  /** The level at some instants. */
  readonly levels: readonly { readonly at: Second; readonly grams: number }[];
}

/** Two shifts of a hopper over one or two lines, with a proven empty between. What truly happened, to the gram. */
export interface TruePlant {
  readonly seed: number;
  readonly flow: TrueFlowName;
  readonly capacityGrams: number;
  /** No pack is further from it than this, on average over a minute. */
  readonly packGrams: number;
  readonly palletPackCount: number;
  readonly periods: readonly TruePeriod[];
}

/** Before the first shift's own bags: what was left inside from earlier ones. */
export const earlierSugar = 'earlier';

export const minuteSeconds = 60;
/** Within a minute: bags pour at its start, the lines draw one after the other, then counts, then levels. */
export const countSecond = 50;
const [lineSeconds, removalSecond, levelSecond] = [[20, 40], 45, 55];
const packLimitGrams = 2;

/** @param withResidue false: the hopper is scraped clean at each empty, and starts clean */
export function truePlant(seed: number, withResidue: boolean, minutesPerPeriod = 300): TruePlant {
  const flow = trueFlowNames[seed % trueFlowNames.length] ?? 'mass flow';
  return new Playing(seed, flow, withResidue).play(minutesPerPeriod);
}

class Playing {
  private readonly random: Random;
  private readonly hopper: TrueFlow;
  private readonly capacityGrams: number;
  private readonly palletPackCount: number;
  private readonly lines: { readonly packsPerMinute: number; count: number }[];
  private readonly draining: { bag: string; left: number; grams: number; perMinute: number; openedAt: number }[] = [];
  private readonly packGrams: number;
  private minute = 0;
  private bagCount = 0;
  private tips: TrueTip[] = [];
  private cells: TrueCell[] = [];
  private removals: TrueRemoval[] = [];
  private levels: { at: number; grams: number }[] = [];

  constructor(
    private readonly seed: number,
    private readonly flow: TrueFlowName,
    private readonly withResidue: boolean,
  ) {
    this.random = seededRandom(seed, 'true plant');
    this.hopper = trueFlows[flow](this.random);
    this.capacityGrams = this.random.whole(16, 34) * 100_000;
    this.packGrams = this.random.pick([500, 1000, 2000]);
    this.palletPackCount = Math.round(this.random.pick([600_000, 800_000, 1_000_000]) / this.packGrams);
    const lineCount = this.random.whole(1, 2);
    this.lines = Array.from({ length: lineCount }, () => ({
      packsPerMinute: Math.round((this.random.between(24_000, 42_000) / this.packGrams) * (3 - lineCount)),
      count: 0,
    }));
  }

  play(minutesPerPeriod: number): TruePlant {
    if (this.withResidue) this.hopper.pour(new Map([[earlierSugar, this.random.whole(5_000, 90_000)]]));
    const periods = [this.playPeriod(minutesPerPeriod), this.playPeriod(minutesPerPeriod)];
    const { seed, flow, capacityGrams, packGrams, palletPackCount } = this;
    return { seed, flow, capacityGrams, packGrams, palletPackCount, periods };
  }

  private playPeriod(minutes: number): TruePeriod {
    const [startsAt, startGrams] = [this.minute * minuteSeconds, this.hopper.levelGrams];
    [this.tips, this.cells, this.removals, this.levels] = [[], [], [], []];
    const lastTip = this.minute + minutes - 25;
    while (this.minute < lastTip || this.draining.length > 0 || this.canPack()) {
      this.nextMinute(this.minute < lastTip);
    }
    this.minute += this.random.whole(2, 6);
    this.scrape();
    this.minute += 1;
    const endsAt = this.minute * minuteSeconds;
    const { tips, cells, removals, levels } = this;
    return { startsAt, endsAt, startGrams, endGrams: this.hopper.levelGrams, tips, cells, removals, levels };
  }

  private canPack(): boolean {
    return this.hopper.flowingGrams > this.packGrams + packLimitGrams;
  }

  private nextMinute(mayTip: boolean): void {
    if (mayTip) this.maybeHang();
    for (const bag of this.draining) this.pour(bag);
    for (const bag of this.draining.splice(0)) if (bag.left > 0) this.draining.push(bag);
    const stands = this.random.happens(0.03);
    this.lines.forEach((line, place) => {
      const wish = stands ? 0 : line.packsPerMinute + this.random.whole(-2, 2);
      this.pack(place, Math.max(0, wish));
    });
    if (this.random.happens(0.06)) this.reject();
    if (this.random.happens(0.008)) this.levels.push({ at: this.at(levelSecond), grams: this.hopper.levelGrams });
    this.minute += 1;
  }

  /** Whoever tips waits until the next bag surely fits, and now and then is away. */
  private maybeHang(): void {
    if (this.draining.length > 1 || this.random.happens(0.6)) return;
    const grams = Math.round(this.random.normal(1_000_000, 5_000));
    const underWay = this.draining.reduce((sum, { left }) => sum + left, 0);
    if (this.hopper.levelGrams + underWay + grams > this.capacityGrams) return;
    this.bagCount += 1;
    const perMinute = Math.ceil(grams / this.random.whole(2, 7));
    this.draining.push({ bag: `bag ${this.bagCount}`, left: grams, grams, perMinute, openedAt: this.at(0) });
  }

  private pour(one: { bag: string; left: number; grams: number; perMinute: number; openedAt: number }): void {
    const poured = Math.min(one.left, one.perMinute);
    one.left -= poured;
    this.hopper.pour(new Map([[one.bag, poured]]));
    const { bag, grams, openedAt } = one;
    if (one.left === 0) this.tips.push({ bag, grams, openedAt, offAt: this.at(0) });
  }

  private pack(place: number, wish: number): void {
    const line = this.lines[place];
    for (let left = wish; line !== undefined && left > 0;) {
      const fits = Math.floor(this.hopper.flowingGrams / (this.packGrams + packLimitGrams));
      const toPalletEnd = this.palletPackCount - (line.count % this.palletPackCount);
      const made = Math.min(left, fits, toPalletEnd);
      if (made === 0) return;
      const grams = made * this.packGrams + this.random.whole(-packLimitGrams * made, packLimitGrams * made);
      const [fromCount, toCount] = [line.count, line.count + made];
      const at = this.at(lineSeconds[place] ?? 0);
      this.cells.push({ line: place, fromCount, toCount, at, grams, sugar: this.hopper.draw(grams) });
      line.count = toCount;
      left -= made;
    }
  }

  private reject(): void {
    const grams = this.random.whole(1, 12) * this.packGrams;
    if (grams > this.hopper.flowingGrams) return;
    this.remove('reject', grams, () => this.hopper.draw(grams));
  }

  private scrape(): void {
    const leaving = this.withResidue ? this.random.whole(0, 45_000) : 0;
    const before = this.hopper.levelGrams;
    const out = gramsIn(this.hopper.scrapeOut(leaving));
    if (before - this.hopper.levelGrams !== out) throw new Error('the hopper lost sugar');
    if (out > 0) this.remove('scraped', out, () => undefined);
  }

  private remove(id: string, grams: number, act: () => unknown): void {
    act();
    this.removals.push({ id: `${id} ${this.minute}`, at: this.at(removalSecond), grams });
  }

  private at(second: number): Second {
    return this.minute * minuteSeconds + second;
  }
}
