import { printCode, printLotCode } from '../../core/identifiers/print-code.js';
import { instantOf, localTimeOf, minuteOfLocal, shiftAt, type DemoShift, type Minute } from './minutes.js';
import type { RunBook } from './run-book.js';
import type { World } from './world.js';

/** What the demo's coders print. */
export const codePattern = 'L{y}{ddd}{line}{shift} {HH}:{mm}';

interface CodedRun {
  readonly key: string;
  readonly book: RunBook;
}

const lateByMinutes = 24;

/** The coder of a line: its shift is set by hand, its clock is its own. */
export class Coder {
  /** Minutes that its clock is ahead of the plant's. */
  private aheadMinutes = 0;
  private setTo: DemoShift | null = null;
  private changeDueAt: Minute | null = null;
  private readonly hourOff: { readonly from: Minute; readonly until: Minute } | null;

  constructor(
    private readonly world: World,
    private readonly line: string,
  ) {
    // Line 2's coder does not know that the clocks go back, until somebody sees it in the morning.
    const from = Math.max(world.plan.from, minuteOfLocal('2026-10-25', '03:00') - 60);
    this.hourOff = line === '2' ? { from, until: minuteOfLocal('2026-10-25', '07:20') } : null;
  }

  /** The whole code of a pack filled at this minute. */
  printedAt(minute: Minute): string {
    return printCode(codePattern, { ...this.facts(), localTime: localTimeOf(minute + this.aheadMinutes) });
  }

  begin(minute: Minute, run: CodedRun): void {
    this.setTo = shiftAt(minute);
    this.changeDueAt = null;
    this.noteCode(minute, run);
  }

  step(minute: Minute, run: CodedRun): void {
    this.keepTime(minute);
    const shift = shiftAt(minute);
    if (this.setTo?.from === shift.from) return;
    const isForgotten = this.changeDueAt === null && this.world.incidents.happensNow('late-code', minute);
    this.changeDueAt ??= isForgotten ? minute + lateByMinutes : minute;
    if (minute < this.changeDueAt) return;
    this.changeDueAt = null;
    this.setTo = shift;
    run.book.cut(minute);
    this.noteCode(minute, run);
  }

  private noteCode(minute: Minute, { key, book }: CodedRun): void {
    const code = printLotCode(codePattern, { ...this.facts(), localTime: null });
    const by = this.world.leadAt(minute);
    const changedAt = instantOf(minute);
    book.codeFrom = book.count;
    this.world.diary.note(minute, by, { kind: 'print-code', run: key, code, packCount: book.count, changedAt });
  }

  private keepTime(minute: Minute): void {
    if (this.hourOff === null) return;
    const isAhead = this.hourOff.from <= minute && minute < this.hourOff.until;
    this.aheadMinutes = isAhead ? 60 : 0;
    const { diary } = this.world;
    const validFrom = instantOf(this.hourOff.from);
    const clock = { kind: 'set-coder-clock', line: this.line } as const;
    if (minute === this.hourOff.until - 35) {
      const reason = 'It was not set back when the clocks changed';
      diary.note(minute, 'lead-M', { ...clock, offsetSeconds: 3600, validFrom, reason });
    }
    if (minute === this.hourOff.until) {
      diary.note(minute, 'lead-M', { ...clock, offsetSeconds: 0, validFrom: instantOf(minute), reason: null });
    }
  }

  private facts() {
    const { productionOn, code } = this.setTo ?? shiftAt(this.world.plan.from);
    return { productionOn, lineCode: this.line, shiftCode: code, bestBeforeOn: null };
  }
}
