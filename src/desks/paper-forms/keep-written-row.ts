import { Inject, Injectable } from '@nestjs/common';
import { KeepEntry } from '../../open-points/keep-entry.js';
import type { Instant } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { Barred } from '../../platform/web/request.js';
import type { WrittenRowForm } from './paper-form.form.js';
import { writtenOf, type RowAt } from './row-at.js';

/** What the row itself is refused for: there is nothing to keep, the right row or sheet is at hand. */
const ofTheRow: ReadonlySet<string> = new Set([
  'paper-row-keyed',
  'paper-row-not-there',
  'paper-row-not-begun',
  'paper-sheet-of-another-kind',
  'paper-check-not-there',
  'paper-check-asked-otherwise',
]);

/** Whether a row that was refused for this may be kept as it is written, for somebody to find out what was. */
export function mayBeKept(code: string): boolean {
  return !ofTheRow.has(code);
}

/** Keeps a row as it was written where the records contradict it, and opens a point. The row stays to be keyed in or struck. */
@Injectable()
export class KeepWrittenRow {
  constructor(
    private readonly keepEntry: KeepEntry,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async execute(at: RowAt, form: WrittenRowForm, why: Barred): Promise<Instant> {
    const written = await writtenOf(this.reader, at, form);
    const content = Object.fromEntries(
      Object.entries(form)
        .filter(([name, value]) => name !== 'keep' && value != null)
        .map(([name, value]) => [name, String(value)]),
    );
    const address = `/paper-forms/${written.sheet}?row=${written.row}`;
    const entry = { content, address, why, timeZone: at.rule.timeZone };
    await this.keepEntry.execute(at.asked, { how: 'paper', ...written }, entry);
    return written.at;
  }
}
