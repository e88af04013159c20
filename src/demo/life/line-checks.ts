import type { CheckStation } from './check-stations.js';
import { instantOf, shiftAt, type Minute } from './minutes.js';
import type { RunBook } from './run-book.js';
import type { World } from './world.js';

interface CheckedRun {
  readonly startedAt: Minute;
  readonly book: RunBook;
}

/** Minutes from the start of the run, or of the shift. */
const weigherEvery = 60;
const detectorEvery = 120;
const shiftChecksAfter = { sieve: 12, seal: 15, code: 35 } as const;

/** The lead's rounds: the weigher every hour, the detector every other, the rest once a shift or run. */
export class LineChecks {
  /** Of a weigher that drifts once: when it will fail. Only line 2 has one, in the first afternoon. */
  private failsAt: Minute | null = null;
  private hasFailed = false;

  constructor(
    private readonly world: World,
    private readonly line: string,
    private readonly printedAt: (minute: Minute) => string,
  ) {}

  step(minute: Minute, run: CheckedRun): void {
    const since = minute - run.startedAt;
    if (since % weigherEvery === 2) this.weigher(minute, run);
    if (since % detectorEvery === 4) this.check(minute, 'detector');
    const sinceShift = Math.min(minute - shiftAt(minute).from, since);
    if (sinceShift === shiftChecksAfter.sieve) this.check(minute, 'sieve');
    if (sinceShift === shiftChecksAfter.seal) this.check(minute, 'seal');
    if (sinceShift === shiftChecksAfter.code) this.check(minute, 'code', { readCode: this.printedAt(minute) });
    if (this.hasFailed && minute === (this.failsAt ?? 0) + 14) this.passAgain(minute, run);
  }

  private weigher(minute: Minute, run: CheckedRun): void {
    const isTheHour = this.line === '2' && shiftAt(minute).code === 'A' && !this.hasFailed;
    if (!isTheHour || minute - run.startedAt < 2 * weigherEvery) {
      this.check(minute, 'weigher');
      return;
    }
    // The counter is read with the good check before and with the failed one: the hold covers just that time.
    run.book.cut(minute);
    const packCount = run.book.count;
    if (this.failsAt === null) {
      this.check(minute, 'weigher', { packCount });
      this.failsAt = minute + weigherEvery;
    } else if (minute === this.failsAt) {
      this.hasFailed = true;
      this.check(minute, 'weigher', { packCount, passed: false });
    }
  }

  /** It was set right: what was packed from the last good check to this one is held. */
  private passAgain(minute: Minute, run: CheckedRun): void {
    run.book.cut(minute);
    this.check(minute, 'weigher', { packCount: run.book.count });
    this.holdTheHour(minute);
  }

  private check(
    minute: Minute,
    station: CheckStation,
    found: { readonly passed?: boolean; readonly packCount?: number; readonly readCode?: string } = {},
  ): void {
    const { passed = true, packCount = null, readCode = null } = found;
    const { line, world } = this;
    const act = {
      kind: 'check-line',
      line,
      station,
      passed,
      packCount,
      readCode,
      checkedAt: instantOf(minute),
    } as const;
    world.diary.note(minute, world.leadAt(minute), act);
  }

  private holdTheHour(minute: Minute): void {
    const hold = `weigher-${this.line}`;
    const { diary } = this.world;
    diary.note(minute + 2, this.world.leadAt(minute), { kind: 'hold-since-good', hold, line: this.line });
    const seen = 'Underweight packs are possible; nothing is unsafe';
    diary.note(minute + 45, 'quality', { kind: 'class-hold', hold, hazard: 'quality', reason: seen });
    const reason = 'All packs of the hour were weighed again; eleven were light and taken out';
    diary.note(minute + 20 * 60, 'quality', { kind: 'lift-hold', hold, reason });
  }
}
