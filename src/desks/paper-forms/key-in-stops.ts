import { Inject, Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { stopOf } from '../../packing/packing-runs.js';
import { StartLineAgain } from '../../packing/start-line-again.js';
import { StopLine } from '../../packing/stop-line.js';
import type { Instant } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';
import { clockTime, type WrittenRestartForm, type WrittenStopForm } from './paper-form.form.js';
import { andThen, runThen, writtenOf, type RowAt } from './row-at.js';
import { asWritten, instantAfter, type Written } from './row-asked.js';

/** Keys in the rows of a sheet of stops. Each answers when it happened. */
@Injectable()
export class KeyInStops {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly stopLine: StopLine,
    private readonly startAgain: StartLineAgain,
  ) {}

  async stop(at: RowAt, { stopReason, packCount, againTime, ...row }: WrittenStopForm): Promise<Instant> {
    const written = await writtenOf(this.reader, at, row);
    const againAt = againTime == null ? null : againTimeOf(at, written.at, againTime);
    const run = await runThen(this.reader, at, written.at);
    const stop = { run, stopReason, packCount: packCount ?? null, stoppedAt: written.at };
    const { id } = await asWritten(this.reader, at.asked, { written, action: 'stop-line' }, (asked) =>
      this.stopLine.execute(asked, stop),
    );
    if (againAt !== null) await this.runAgain(andThen(at.asked), id, { ...written, at: againAt });
    return written.at;
  }

  /** The line ran again after a stop whose beginning was keyed in. */
  async again(at: RowAt, { againTime }: WrittenRestartForm): Promise<Instant> {
    const { row, asked, sheet } = at;
    const begun = row.entries[0];
    if (row.openEnd?.of !== 'stop' || begun === undefined) {
      throw new Refusal('paper-row-not-begun', { sheet: sheet.facts.number, row: row.row });
    }
    const { stoppedAt } = await stopOf(this.reader, asked.actor.siteId, row.openEnd.id);
    const againAt = againTimeOf(at, stoppedAt, againTime);
    const written = { sheet: sheet.facts.number, row: row.row, at: againAt, writtenBy: begun.writtenBy };
    await this.runAgain(asked, row.openEnd.id, written);
    return againAt;
  }

  private runAgain(asked: Asked, stopId: string, written: Written): Promise<unknown> {
    const again = { startedAgainAt: written.at };
    return asWritten(this.reader, asked, { written, action: 'start-line-again' }, (one) =>
      this.startAgain.execute(one, stopId, again),
    );
  }
}

function againTimeOf(at: RowAt, stoppedAt: Instant, typed: string): Instant {
  return instantAfter(stoppedAt, { field: 'againTime', time: clockTime(typed) }, at.rule);
}
