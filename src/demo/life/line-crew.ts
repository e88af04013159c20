import type { HopperCells } from '../plant-physics/hopper-cells.js';
import { gramsIn } from '../plant-physics/composition.js';
import { PackingMachine } from '../plant-physics/packing-machine.js';
import type { Random } from '../plant-physics/random.js';
import type { StopWord } from './act.js';
import { Coder } from './coder.js';
import type { FormatCode, GradeCode, LinePlan } from './demo-plan.js';
import { LineChecks } from './line-checks.js';
import { LineBins, type TakenBin } from './line-bins.js';
import { instantOf, type Minute } from './minutes.js';
import { natureOf } from './pack-formats.js';
import { PackWeighing } from './pack-weighing.js';
import { PalletMaker } from './pallet-maker.js';
import { RunBook } from './run-book.js';
import type { World } from './world.js';

interface LiveRun {
  readonly key: string;
  readonly format: FormatCode;
  readonly machine: PackingMachine;
  readonly book: RunBook;
  readonly startedAt: Minute;
  filmEndsAt: number;
  film: string | null;
}

/** One packing line and who runs it. */
export class LineCrew {
  readonly coder: Coder;
  private readonly random: Random;
  private run: LiveRun | null = null;
  private stop: { readonly key: string; readonly until: Minute } | null = null;
  private readonly bins: LineBins;
  private readonly pallets: PalletMaker;
  private readonly checks: LineChecks;
  private readonly weigher: PackWeighing;
  private serial = { run: 0, stop: 0, film: 0, handover: 0 };
  private isStarved = false;

  constructor(
    private readonly world: World,
    readonly plan: LinePlan,
    private readonly hopper: HopperCells,
  ) {
    this.random = world.random(`line ${plan.code}`);
    this.coder = new Coder(world, plan.code);
    this.bins = new LineBins(world, plan.code);
    this.pallets = new PalletMaker(world, world.random(`pallets ${plan.code}`));
    this.weigher = new PackWeighing(world, plan.code);
    this.checks = new LineChecks(world, plan.code, (minute) => this.coder.printedAt(minute));
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
      filmEndsAt: 0,
      film: null,
    };
    this.isStarved = false;
    this.bins.begin();
    this.pallets.begin();
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
    if (this.hopper.flowingGrams > 20_000) this.bins.keepBack(minute + 2, this.hopper.draw(machine.gramsOf(2)));
  }

  /** What the line does from this minute to the next. */
  step(minute: Minute): void {
    const { run } = this;
    if (run === null) return;
    this.coder.step(minute, run);
    this.checks.step(minute, run);
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
    this.pallets.buildFull(minute + 1, run);
    if ((minute + 1) % 30 === 0) this.count(minute + 1);
    // Nothing is left to come when the demo begins to be looked at.
    if (minute + 2 === this.world.plan.until) this.sendWeights(minute + 1, run);
  }

  /** The counter of the line, read by itself. */
  count(minute: Minute): void {
    const { run } = this;
    if (run === null || run.startedAt >= minute) return;
    run.book.cut(minute);
    const { count } = run.book;
    this.sendWeights(minute, run);
    this.world.diary.note(minute, 'counter', {
      kind: 'count',
      run: run.key,
      packCount: count,
      countedAt: instantOf(minute),
      occasion: 'minute',
    });
  }

  /** At a change of shift: bins weighed, floor swept, loose packs counted. */
  handOver(minute: Minute, fate: 'waste' | 'rework'): TakenBin | null {
    const { run } = this;
    if (run === null) return null;
    run.book.cut(minute);
    this.sendWeights(minute, run);
    const counted = { packCount: run.book.count, loosePackCount: this.pallets.looseCount(run) };
    this.signOver(minute, counted);
    this.bins.sweep(minute);
    return this.bins.weighRejects(minute, run, fate);
  }

  /** Both sign at the line; now and then the next lead comes late, and confirms the opening alone. */
  private signOver(minute: Minute, counted: { readonly packCount: number; readonly loosePackCount: number }): void {
    const { code: line } = this.plan;
    const [outgoing, next] = [this.world.leadAt(minute), this.world.leadAt(minute + 5)];
    this.serial.handover += 1;
    const isAlone = this.serial.handover % 4 === 0;
    const incoming = isAlone ? null : next;
    this.world.diary.note(minute, outgoing, { kind: 'hand-over', line, ...counted, incoming });
    if (isAlone) this.world.diary.note(minute + 9, next, { kind: 'open-line', line });
  }

  closeRun(minute: Minute): void {
    const { run } = this;
    if (run === null) return;
    const by = this.world.leadAt(minute);
    if (this.stop !== null)
      this.world.diary.note(minute, by, { kind: 'start-again', stop: this.stop.key, at: instantOf(minute) });
    this.stop = null;
    this.bins.sweep(minute);
    this.bins.weighRejects(minute, run, 'waste');
    run.book.cut(minute);
    const counted = { packCount: run.book.count, loosePackCount: this.pallets.looseCount(run) };
    const closedAt = instantOf(minute);
    this.sendWeights(minute, run);
    this.world.diary.note(minute, by, { kind: 'close-run', run: run.key, ...counted, closedAt });
    this.pallets.buildRest(minute + 4, run);
    this.run = null;
  }

  /** The demo ends: what was packed and taken off until now is known. */
  remember(minute: Minute): void {
    this.run?.book.cut(minute);
    this.bins.remember();
  }

  private sendWeights(minute: Minute, { key, format, machine }: LiveRun): void {
    this.weigher.send(minute, { key, format, spreadGrams: machine.nature.spreadGrams });
  }

  private pack(minute: Minute, run: LiveRun): void {
    const { packCount, rejectCount } = run.machine.nextMinute();
    const perPack = run.machine.nature.setpointGrams;
    const possible = Math.floor((this.hopper.flowingGrams * 0.98) / perPack) - rejectCount - 1;
    const packs = Math.min(packCount, Math.max(0, possible));
    this.isStarved = packs < packCount;
    if (packs === 0) return;
    for (let left = packs; left > 0;) {
      const room = this.pallets.roomFor(run);
      const size = room > 0 ? Math.min(left, room) : left;
      const sugar = this.hopper.draw(run.machine.gramsOf(size));
      run.book.packed(minute, size, sugar);
      this.weigher.packed(minute, size, gramsIn(sugar));
      if (size === room) run.book.cut(minute + 1);
      left -= size;
    }
    for (let reject = 0; reject < rejectCount; reject += 1) {
      const sugar = this.hopper.draw(run.machine.gramsOfReject());
      this.bins.reject(sugar);
      this.weigher.thrownOut(minute, gramsIn(sugar));
    }
    if (this.random.happens(0.012)) this.bins.spill(this.hopper.draw(this.random.whole(150, 1900)));
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
}
