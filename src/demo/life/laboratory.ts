import type { Random } from '../plant-physics/random.js';
import type { GradeCode } from './demo-plan.js';
import { gradeLimits, type LiveBag } from './live-bag.js';
import { instantOf, type Minute } from './minutes.js';
import type { World } from './world.js';

interface Found {
  readonly moisturePercent: number;
  readonly colourIu: number;
}

/** The analysts: moisture after about two hours, colour after about four; some a day late. */
export class Laboratory {
  private readonly random: Random;

  constructor(private readonly world: World) {
    this.random = world.random('laboratory');
  }

  /** A sample that stands for all bags of an hour: what is found is theirs. */
  analyseHour(minute: Minute, sample: string, found: Found & { readonly bags: readonly LiveBag[] }): void {
    const isDayLate = this.world.incidents.happensNow('day-late-result', minute) || this.random.happens(0.02);
    const grade = found.bags[0]?.grade ?? 'WS2';
    const knownAt = this.report(minute, sample, { ...found, grade, isDayLate });
    for (const bag of found.bags) {
      bag.resultsKnownAt = knownAt;
      if (bag.whereabouts === 'set-aside') continue;
      bag.moisturePercent = Number(found.moisturePercent.toFixed(3));
      bag.colourIu = Math.round(found.colourIu);
    }
    const isClear = found.colourIu < gradeLimits[grade].colourIu - 3;
    if (isClear && this.random.happens(0.04)) this.retest(knownAt + 40, sample, found.colourIu, grade);
  }

  /** A sample of one bag only. */
  analyseBag(minute: Minute, sample: string, bag: LiveBag): void {
    const { moisturePercent, colourIu, grade } = bag;
    bag.resultsKnownAt = this.report(minute, sample, { moisturePercent, colourIu, grade, isDayLate: false });
    bag.moisturePercent = Number(moisturePercent.toFixed(3));
    bag.colourIu = Math.round(colourIu);
  }

  private report(
    minute: Minute,
    sample: string,
    found: Found & { readonly grade: GradeCode; readonly isDayLate: boolean },
  ): Minute {
    const moistureAt = minute + this.random.whole(80, 150);
    const colourAt = minute + (found.isDayLate ? this.random.whole(1380, 1560) : this.random.whole(190, 290));
    const { grade } = found;
    this.note(moistureAt, sample, { grade, property: 'moisture-percent', amount: found.moisturePercent.toFixed(3) });
    this.note(colourAt, sample, { grade, property: 'colour-iu', amount: String(Math.round(found.colourIu)) });
    return colourAt;
  }

  private retest(minute: Minute, sample: string, colourIu: number, grade: GradeCode): void {
    const amount = String(Math.round(colourIu + this.random.between(-1, 1)));
    this.note(minute, sample, { grade, property: 'colour-iu', amount, isRetest: true });
  }

  private note(
    minute: Minute,
    sample: string,
    result: { grade: GradeCode; property: 'moisture-percent' | 'colour-iu'; amount: string; isRetest?: boolean },
  ): void {
    if (minute >= this.world.plan.until) return;
    const analysedAt = instantOf(minute - 5);
    this.world.diary.note(minute, 'analyst', { kind: 'report', sample, isRetest: false, ...result, analysedAt });
  }
}
