import { gramsIn, pourInto, takeAll, type Composition } from '../plant-physics/composition.js';
import type { HopperCells } from '../plant-physics/hopper-cells.js';
import { PackingMachine } from '../plant-physics/packing-machine.js';
import type { Random } from '../plant-physics/random.js';
import type { RunSpan, StopWord } from './act.js';
import { Coder } from './coder.js';
import type { FormatCode, GradeCode, LinePlan } from './demo-plan.js';
import { instantOf, type Minute } from './minutes.js';
import { natureOf, packsPerPallet } from './pack-formats.js';
import { RunBook } from './run-book.js';
import type { World } from './world.js';

interface LiveRun {
  readonly key: string;
  readonly format: FormatCode;
  readonly machine: PackingMachine;
  readonly book: RunBook;
  readonly startedAt: Minute;
  palletFrom: number;
  filmEndsAt: number;
  film: string | null;
  rejectsFrom: number;
}

interface Rejects {
  readonly sugar: Composition;
  packCount: number;
}

/** One packing line and who runs it. */
export class LineCrew {
  readonly coder: Coder;
  private readonly random: Random;
  private run: LiveRun | null = null;
  private stop: { readonly key: string; readonly until: Minute } | null = null;
  private rejects: Rejects = { sugar: new Map(), packCount: 0 };
  private readonly spilt: Composition = new Map();
  private serial = { run: 0, stop: 0, film: 0, pallet: 0 };
  private isStarved = false;

  constructor(
    private readonly world: World,
    readonly plan: LinePlan,
    private readonly hopper: HopperCells,
  ) {
    this.random = world.random(`line ${plan.code}`);
    this.coder = new Coder(world, plan.code);
  }

  get isRunning(): boolean {
    return this.run !== null;
  }

  get hasStarved(): boolean {
    return this.isStarved;
  }

  startRun(minute: Minute, grade: GradeCode): void {
    const packs = this.plan.packs[grade];
    if (packs === undefined) throw new RangeError(`Line ${this.plan.code} does not pack ${grade}`);
    this.serial.run += 1;
    const key = `L${this.plan.code}-run-${this.serial.run}`;
    const machine = new PackingMachine(natureOf(packs), this.world.random(`machine ${key}`));
    const book = new RunBook(this.world.ledger, key, (at) => this.coder.printedAt(at));
    this.run = {
      key,
      format: packs.format,
      machine,
      book,
      startedAt: minute,
      palletFrom: 0,
      filmEndsAt: 0,
      film: null,
      rejectsFrom: 0,
    };
    this.isStarved = false;
    const by = this.world.leadAt(minute);
    const { format } = packs;
    this.world.diary.note(minute, by, {
      kind: 'start-run',
      run: key,
      line: this.plan.code,
      format,
      startedAt: instantOf(minute),
    });
    this.coder.begin(minute, this.run);
    this.fitFilm(minute, this.run);
    if (!this.world.incidents.happensNow('no-hand-sample', minute)) this.weighPacks(minute + 55, this.run);
    this.takeRetained(minute);
  }

  /** What the line does from this minute to the next. */
  step(minute: Minute): void {
    const { run } = this;
    if (run === null) return;
    this.coder.step(minute, run);
    if (this.stop !== null) {
      if (minute < this.stop.until) return;
      this.world.diary.note(minute, this.world.leadAt(minute), {
        kind: 'start-again',
        stop: this.stop.key,
        at: instantOf(minute),
      });
      this.stop = null;
    }
    if (this.mayStop(minute, run)) return;
    this.pack(minute, run);
    this.buildPallets(minute + 1, run);
    if ((minute + 1) % 30 === 0) this.count(minute + 1);
  }

  /** The counter of the line, read by itself. */
  count(minute: Minute): void {
    const { run } = this;
    if (run === null || run.startedAt >= minute) return;
    run.book.cut(minute);
    const { count } = run.book;
    this.world.diary.note(minute, 'counter', {
      kind: 'count',
      run: run.key,
      packCount: count,
      countedAt: instantOf(minute),
      occasion: 'minute',
    });
  }

  /** At a change of shift: bins weighed, floor swept, loose packs counted. */
  handOver(
    minute: Minute,
    by: 'waste' | 'rework',
  ): { readonly sugar: Composition; readonly parents: readonly RunSpan[] } | null {
    const { run } = this;
    if (run === null) return null;
    run.book.cut(minute);
    const { count } = run.book;
    const loosePackCount = count - run.palletFrom;
    const lead = this.world.leadAt(minute);
    this.world.diary.note(minute, lead, {
      kind: 'count-loose',
      run: run.key,
      packCount: count,
      loosePackCount,
      countedAt: instantOf(minute),
    });
    this.sweep(minute);
    return this.weighRejects(minute, run, by);
  }

  closeRun(minute: Minute): void {
    const { run } = this;
    if (run === null) return;
    const by = this.world.leadAt(minute);
    if (this.stop !== null)
      this.world.diary.note(minute, by, { kind: 'start-again', stop: this.stop.key, at: instantOf(minute) });
    this.stop = null;
    this.sweep(minute);
    this.weighRejects(minute, run, 'waste');
    run.book.cut(minute);
    const { count } = run.book;
    const loosePackCount = count - run.palletFrom;
    this.world.diary.note(minute, by, {
      kind: 'close-run',
      run: run.key,
      packCount: count,
      loosePackCount,
      closedAt: instantOf(minute),
    });
    if (loosePackCount > 0) this.build(minute + 4, [{ run: run.key, fromCount: run.palletFrom, toCount: count }]);
    this.run = null;
  }

  /** The demo ends: what was packed and taken off until now is known. */
  remember(minute: Minute): void {
    this.run?.book.cut(minute);
    this.world.ledger.lost(this.spilt);
    this.world.ledger.lost(this.rejects.sugar);
  }

  private pack(minute: Minute, run: LiveRun): void {
    const { packCount, rejectCount } = run.machine.nextMinute();
    const perPack = run.machine.nature.setpointGrams;
    const possible = Math.floor((this.hopper.flowingGrams * 0.98) / perPack) - rejectCount - 1;
    const packs = Math.min(packCount, Math.max(0, possible));
    this.isStarved = packs < packCount;
    if (packs === 0) return;
    const perPallet = packsPerPallet[run.format];
    for (let left = packs; left > 0;) {
      const room = run.palletFrom + perPallet - run.book.count;
      const size = room > 0 ? Math.min(left, room) : left;
      run.book.packed(minute, size, this.hopper.draw(run.machine.gramsOf(size)));
      if (size === room) run.book.cut(minute + 1);
      left -= size;
    }
    for (let reject = 0; reject < rejectCount; reject += 1) {
      pourInto(this.rejects.sugar, this.hopper.draw(run.machine.gramsOfReject()));
      this.rejects.packCount += 1;
    }
    if (this.random.happens(0.012)) pourInto(this.spilt, this.hopper.draw(this.random.whole(150, 1900)));
  }

  private buildPallets(minute: Minute, run: LiveRun): void {
    const perPallet = packsPerPallet[run.format];
    while (run.book.count - run.palletFrom >= perPallet) {
      const range = { run: run.key, fromCount: run.palletFrom, toCount: run.palletFrom + perPallet };
      run.palletFrom = range.toCount;
      run.book.cut(minute);
      this.build(minute, [range]);
    }
  }

  private build(minute: Minute, ranges: readonly RunSpan[]): void {
    const { diary } = this.world;
    const pallet = `${ranges[0]?.run ?? ''}-${ranges[0]?.fromCount ?? 0}`;
    const by = this.world.leadAt(minute);
    this.serial.pallet += 1;
    // Most labels are printed by the line itself; some from here, so that the demo has labels to look at.
    const hasLabel = this.serial.pallet % 40 === 1;
    diary.note(minute, by, { kind: 'build-pallet', pallet, ranges, builtAt: instantOf(minute), hasLabel });
    diary.note(minute + 5, 'loader', { kind: 'move-pallet', pallet, place: `LANE-${this.random.whole(1, 6)}` });
    const packCount = (ranges[0]?.toCount ?? 0) - (ranges[0]?.fromCount ?? 0);
    const isOneLot = (ranges[0]?.fromCount ?? 0) >= (this.run?.book.codeFrom ?? Number.POSITIVE_INFINITY);
    if (packCount < 400 || !isOneLot || !this.world.incidents.happensNow('split-pallet', minute)) return;
    const parts = [`${pallet}-a`, `${pallet}-b`] as const;
    const packCounts = [160, packCount - 160] as const;
    diary.note(minute + 45, 'clerk', { kind: 'split-pallet', pallet, parts, packCounts });
  }

  private mayStop(minute: Minute, run: LiveRun): boolean {
    const isFilmOut = run.book.count >= run.filmEndsAt;
    if (!isFilmOut && !this.random.happens(1 / 115)) return false;
    this.serial.stop += 1;
    const key = `L${this.plan.code}-stop-${this.serial.stop}`;
    const length = isFilmOut
      ? this.random.whole(2, 4)
      : Math.min(25, 3 + Math.floor(-5 * Math.log(1 - this.random.next())));
    const reason: StopWord = isFilmOut
      ? 'film-change'
      : this.random.pick(['jam', 'jam', 'seal', 'no-pallets', 'cleaning']);
    this.stop = { key, until: minute + length };
    run.book.cut(minute);
    const [packCount, stoppedAt] = [run.book.count, instantOf(minute)];
    this.world.diary.note(minute, this.world.leadAt(minute), {
      kind: 'stop-line',
      stop: key,
      run: run.key,
      reason,
      packCount,
      stoppedAt,
    });
    if (isFilmOut) this.fitFilm(minute + 1, run);
    return true;
  }

  private fitFilm(minute: Minute, run: LiveRun): void {
    this.serial.film += 1;
    // Three rolls come from one lot of the maker.
    const film = `F-${run.format.slice(-3)}-${this.plan.code}${String(Math.ceil(this.serial.film / 3)).padStart(4, '0')}`;
    run.filmEndsAt = run.book.count + this.random.whole(5200, 6800);
    if (run.film === film) return;
    run.film = film;
    const by = this.world.leadAt(minute);
    const [packCount, fittedAt] = [run.book.count, instantOf(minute)];
    this.world.diary.note(minute, by, { kind: 'fit-film', run: run.key, film, packCount, fittedAt });
  }

  /** Twenty packs by hand on the bench scale, once a run. */
  private weighPacks(minute: Minute, run: LiveRun): void {
    const netDecigrams = Array.from({ length: 20 }, () => run.machine.decigramsOfPack());
    this.world.diary.note(minute, this.world.leadAt(minute), {
      kind: 'weigh-packs',
      run: run.key,
      netDecigrams,
      weighedAt: instantOf(minute),
    });
  }

  /** Two packs are kept back at the start, taken off before the counter. */
  private takeRetained(minute: Minute): void {
    const { run } = this;
    if (run === null || this.hopper.flowingGrams < 20_000) return;
    const sugar = this.hopper.draw(run.machine.gramsOf(2));
    this.world.ledger.lost(sugar);
    const netGrams = this.world.weigh('P1', gramsIn(sugar));
    const removedAt = instantOf(minute + 2);
    const line = this.plan.code;
    this.world.diary.note(minute + 2, this.world.leadAt(minute), {
      ...{
        kind: 'remove',
        what: 'sample',
        line,
        packCount: 2,
        netGrams,
        reason: 'retained',
        fate: 'retained',
        removedAt,
      },
    });
  }

  private sweep(minute: Minute): void {
    const sugar = takeAll(this.spilt);
    if (gramsIn(sugar) < 60) return;
    this.world.ledger.lost(sugar);
    const netGrams = this.world.weigh('P1', gramsIn(sugar));
    const removedAt = instantOf(minute);
    const line = this.plan.code;
    this.world.diary.note(minute, this.world.leadAt(minute), {
      ...{
        kind: 'remove',
        what: 'sweepings',
        line,
        packCount: null,
        netGrams,
        reason: 'floor',
        fate: 'waste',
        removedAt,
      },
    });
  }

  private weighRejects(
    minute: Minute,
    run: LiveRun,
    fate: 'waste' | 'rework',
  ): { readonly sugar: Composition; readonly parents: readonly RunSpan[] } | null {
    const { sugar, packCount } = this.rejects;
    const parents = [{ run: run.key, fromCount: run.rejectsFrom, toCount: run.book.count }];
    run.rejectsFrom = run.book.count;
    this.rejects = { sugar: new Map(), packCount: 0 };
    if (packCount === 0) return null;
    const netGrams = this.world.weigh('P1', gramsIn(sugar));
    const removedAt = instantOf(minute);
    const line = this.plan.code;
    this.world.diary.note(minute, this.world.leadAt(minute), {
      ...{ kind: 'remove', what: 'reject', line, packCount, netGrams, reason: 'underweight', fate, removedAt },
    });
    this.world.ledger.lost(sugar);
    return { sugar, parents };
  }
}
