import { normaliseCode } from '../../src/core/identifiers/normalise-code.js';
import { printLotCode } from '../../src/core/identifiers/print-code.js';
import { codePattern } from '../../src/demo/life/coder.js';
import { instantOf, type DemoShift, type Minute } from '../../src/demo/life/minutes.js';
import { MeanNet } from '../../src/fill-weight/mean-net.entity.js';
import { CoderChange } from '../../src/packing/coder-change.entity.js';
import { FilmUse } from '../../src/packing/film-use.entity.js';
import { LineRestart } from '../../src/packing/line-restart.entity.js';
import { LineStop } from '../../src/packing/line-stop.entity.js';
import { Lot } from '../../src/packing/lot.entity.js';
import { PackCount } from '../../src/packing/pack-count.entity.js';
import { PackingRunClose } from '../../src/packing/packing-run-close.entity.js';
import { PackingRunState } from '../../src/packing/packing-run-state.entity.js';
import { PackingRun } from '../../src/packing/packing-run.entity.js';
import { RunCourse } from '../../src/packing/run-course.entity.js';
import { writeCourse, type CountPoint } from '../../src/packing/run-course.js';
import { Removal } from '../../src/packing/removal.entity.js';
import type { BenchHopper, History } from './history.js';
import type { PalletHistory } from './pallet-history.js';

const meanMilligrams = 1_002_000;
const filmChangeMinutes = 160;

/** One run of a shift: its counts of every minute, its one lot, film, a hand sample, a stop, what was rejected. */
export class RunHistory {
  private readonly id: string;
  private readonly lotId: string;
  private readonly counts: CountPoint[] = [];
  private count = 0;
  private lastAt: Minute;
  private filmSince: Minute;

  constructor(
    private readonly history: History,
    private readonly hopper: BenchHopper,
    private readonly shift: DemoShift,
    private readonly pallets: PalletHistory,
  ) {
    const at = shift.from + 6;
    this.lastAt = at;
    this.filmSince = at;
    this.id = history.numbers.id(at * 60_000);
    this.lotId = history.numbers.id(at * 60_000);
    this.begin(at);
  }

  /** Counts the packs of a minute. Answers their grams. */
  pack(minute: Minute, packs: number): number {
    this.lastAt = minute + 1;
    this.count += packs;
    this.putCount('minute');
    this.pallets.lay({ runId: this.id, lotId: this.lotId, lineId: this.hopper.lineId }, this.count, this.lastAt);
    if (minute - this.filmSince >= filmChangeMinutes) this.fitFilm(minute);
    if (minute === this.shift.from + 60) this.weighSample(minute);
    return packs * 1002;
  }

  stop(minute: Minute, minutes: number): void {
    const { sink, numbers } = this.history;
    const id = numbers.id(minute * 60_000);
    sink.put(LineStop, { id, runId: this.id, reason: 'jam', stoppedAt: instantOf(minute), voidedBy: null });
    const startedAgainAt = instantOf(minute + minutes);
    sink.put(LineRestart, { id: numbers.id((minute + minutes) * 60_000), stopId: id, startedAgainAt, voidedBy: null });
  }

  /** Weighs what was rejected and closes. Answers the grams of the rejects. */
  close(grams: number): number {
    const { sink, numbers, plant } = this.history;
    const id = numbers.id(this.lastAt * 60_000);
    const closedAt = instantOf(this.lastAt);
    if (grams > 0) {
      sink.put(Removal, {
        ...{ id, siteId: plant.siteId, kind: 'reject', runId: this.id, lineId: this.hopper.lineId },
        ...{ hopperId: this.hopper.hopperId, packCount: null, grams, scaleId: plant.platformScaleId },
        ...{ reason: 'underweight', fate: 'waste', removedAt: closedAt, voidedBy: null },
      });
    }
    this.putCount('close');
    const packCount = this.count;
    sink.put(PackingRunClose, {
      id: numbers.id(this.lastAt * 60_000),
      runId: this.id,
      packCount,
      closedAt,
      voidedBy: null,
    });
    sink.put(RunCourse, { runId: this.id, course: writeCourse(this.counts) });
    sink.put(PackingRunState, { runId: this.id, openLineId: null, packCount, lastCountedAt: closedAt });
    return grams;
  }

  private begin(at: Minute): void {
    const { sink, numbers, plant } = this.history;
    const { siteId, formatId } = plant;
    const number = numbers.document('packing-run', 'PR', new Date(at * 60_000).getUTCFullYear());
    const startedAt = instantOf(at);
    sink.put(PackingRun, {
      ...{ id: this.id, siteId, number, lineId: this.hopper.lineId, formatId, startedAt, voidedBy: null },
    });
    this.putCount('start');
    const code = printLotCode(codePattern, {
      ...{ productionOn: this.shift.productionOn, lineCode: this.hopper.lineCode, shiftCode: this.shift.code },
      ...{ localTime: null, bestBeforeOn: null },
    });
    sink.put(Lot, { id: this.lotId, siteId, formatId, code, searchCode: normaliseCode(code), voidedBy: null });
    sink.put(CoderChange, {
      ...{ id: numbers.id(at * 60_000), runId: this.id, coderId: this.hopper.coderId, lotId: this.lotId, firstPack: 0 },
      ...{ changedAt: startedAt, intendedCode: code, isAsIntended: true, voidedBy: null },
    });
    this.fitFilm(at);
  }

  private putCount(occasion: PackCount['occasion']): void {
    const id = this.history.numbers.id(this.lastAt * 60_000);
    const point = { runId: this.id, packCount: this.count, countedAt: instantOf(this.lastAt), occasion };
    this.counts.push(point);
    this.history.sink.put(PackCount, { id, ...point, voidedBy: null });
  }

  private fitFilm(at: Minute): void {
    const { sink, numbers } = this.history;
    this.filmSince = at;
    const filmLotId = this.history.films.lotAt(at);
    sink.put(FilmUse, {
      ...{ id: numbers.id(at * 60_000), runId: this.id, filmLotId, firstPack: this.count, fittedAt: instantOf(at) },
      voidedBy: null,
    });
  }

  private weighSample(at: Minute): void {
    const { sink, numbers, plant } = this.history;
    sink.put(MeanNet, {
      ...{ id: numbers.id(at * 60_000), runId: this.id, scaleId: plant.benchScaleId, samplePackCount: 20 },
      ...{ meanMilligrams, lowerMilligrams: meanMilligrams - 2500, upperMilligrams: meanMilligrams + 2500 },
      ...{ netDecigrams: '[]', weighedAt: instantOf(at), voidedBy: null },
    });
  }
}
