import type { Random } from '../plant-physics/random.js';
import type { RunSpan } from './act.js';
import type { FormatCode } from './demo-plan.js';
import { instantOf, type Minute } from './minutes.js';
import { packsPerPallet } from './pack-formats.js';
import type { RunBook } from './run-book.js';
import type { World } from './world.js';

interface PackedRun {
  readonly key: string;
  readonly format: FormatCode;
  readonly book: RunBook;
}

/** Puts the packs of a line onto pallets, in the order of its counter. */
export class PalletMaker {
  private builtCount = 0;
  /** The count from which on packs stand on no pallet yet. */
  private from = 0;

  constructor(
    private readonly world: World,
    private readonly random: Random,
  ) {}

  begin(): void {
    this.from = 0;
  }

  /** Packs on belts and tables. */
  looseCount({ book }: PackedRun): number {
    return book.count - this.from;
  }

  /** Packs that the pallet under way still takes; 0 once it is full and not yet labelled. */
  roomFor({ format, book }: PackedRun): number {
    return this.from + packsPerPallet[format] - book.count;
  }

  buildFull(minute: Minute, run: PackedRun): void {
    const size = packsPerPallet[run.format];
    while (run.book.count - this.from >= size) {
      run.book.cut(minute);
      this.build(minute, run, size);
    }
  }

  /** The last packs of a run stand on a part pallet. */
  buildRest(minute: Minute, run: PackedRun): void {
    const rest = this.looseCount(run);
    if (rest > 0) this.build(minute, run, rest);
  }

  private build(minute: Minute, run: PackedRun, packCount: number): void {
    const { diary } = this.world;
    const range: RunSpan = { run: run.key, fromCount: this.from, toCount: this.from + packCount };
    const isOneLot = this.from >= run.book.codeFrom;
    this.from = range.toCount;
    this.builtCount += 1;
    const pallet = `${run.key}-${range.fromCount}`;
    // Most labels are printed by the line itself; some from here, so that the demo has labels to look at.
    const hasLabel = this.builtCount % 40 === 1;
    const by = this.world.leadAt(minute);
    diary.note(minute, by, { kind: 'build-pallet', pallet, ranges: [range], builtAt: instantOf(minute), hasLabel });
    if (hasLabel) diary.note(minute + 1, by, { kind: 'scan-back', pallet });
    diary.note(minute + 5, 'loader', { kind: 'move-pallet', pallet, place: `LANE-${this.random.whole(1, 6)}` });
    if (packCount < 400 || !isOneLot || !this.world.incidents.happensNow('split-pallet', minute)) return;
    const parts = [`${pallet}-a`, `${pallet}-b`] as const;
    const packCounts = [160, packCount - 160] as const;
    diary.note(minute + 45, 'clerk', { kind: 'split-pallet', pallet, parts, packCounts });
  }
}
