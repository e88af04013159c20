import { pourInto, type Composition } from '../plant-physics/composition.js';
import type { Minute } from './minutes.js';
import type { TruthLedger } from './truth-ledger.js';

/** Minutes of each half hour whose packs are kept apart in the truth, with what was printed on them. */
const probeMinute = 7;

/** The counter of a run, and beside it the truth about what is in its packs. */
export class RunBook {
  count = 0;
  /** The count at which the code on the packs was last changed. */
  codeFrom = 0;
  private cell: { readonly fromCount: number; readonly fromMinute: Minute; readonly sugar: Composition } | null = null;

  constructor(
    private readonly ledger: TruthLedger,
    private readonly run: string,
    private readonly printedAt: (minute: Minute) => string,
  ) {}

  packed(minute: Minute, packCount: number, sugar: Composition): void {
    if (minute % 30 === probeMinute || minute % 30 === probeMinute + 1) this.cut(minute);
    this.cell ??= { fromCount: this.count, fromMinute: minute, sugar: new Map() };
    pourInto(this.cell.sugar, sugar);
    this.count += packCount;
  }

  /** The next packs are looked at apart: a count, the end of a pallet, another code. */
  cut(minute: Minute): void {
    const { cell } = this;
    if (cell === null || cell.fromCount === this.count) return;
    const isProbe = cell.fromMinute % 30 === probeMinute;
    this.ledger.cells.push({
      run: this.run,
      fromCount: cell.fromCount,
      toCount: this.count,
      fromMinute: cell.fromMinute,
      untilMinute: minute,
      printed: isProbe ? this.printedAt(cell.fromMinute) : null,
      grams: Object.fromEntries(cell.sugar),
    });
    this.cell = null;
  }
}
