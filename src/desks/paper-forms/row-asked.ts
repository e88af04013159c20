import { lastShownAt } from '../../core/shift-calendar/last-shown-at.js';
import { instantsOfLocalTime } from '../../core/shift-calendar/local-time.js';
import { refuseKeyedRow } from '../../journal/add-happening.js';
import type { Asked } from '../../journal/entry-draft.js';
import { shifted, type Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { BadForm, Refusal } from '../../platform/refusal.js';
import type { PaperFormFacts } from './form-kinds.js';
import type { FormRow } from './form-rows.js';

/** A time as it stands on a sheet: the clock on the wall, and the day where somebody gives it. */
export interface WrittenTime {
  readonly field: string;
  readonly time: string;
  readonly day: string | null;
}

/** What a written time is understood by. */
export interface TimeRule {
  readonly timeZone: string;
  /** A time without its day is the last one not later than this. */
  readonly until: Instant;
  readonly now: Instant;
}

const halfADay = 12 * 3_600_000;

/**
 * The limit before which the times of a row lie. Where another row was keyed in with its time, its neighbour's lie within
 * half a day of it, on either side of midnight; else they are of the day before now.
 */
export function lastTimeOf(rows: readonly FormRow[], row: number, now: Instant): Instant {
  const keyed = rows.filter(({ state }) => state === 'keyed' || state === 'begun');
  const neighbour = keyed.filter((one) => one.row <= row).at(-1) ?? keyed.find((one) => one.row > row);
  const at = neighbour?.entries[0]?.happenedAt;
  const until = at === undefined ? now : shifted(at, halfADay);
  return until < now ? until : now;
}

/**
 * The instant that was written. A time that the clocks show twice is its first coming where the day is given.
 *
 * @throws {BadForm} for a time that the plant's clocks did not show, or that is ahead of them
 */
export function instantOfWritten({ field, time, day }: WrittenTime, { timeZone, until, now }: TimeRule): Instant {
  if (day === null) return lastShownAt(timeZone, time, until);
  const [at] = instantsOfLocalTime(timeZone, day, time);
  if (at === undefined) throw new BadForm([{ field, code: 'field-not-local-time', facts: {} }]);
  if (at > now) throw new BadForm([{ field, code: 'written-ahead', facts: {} }]);
  return at;
}

/** The second time of a row, such as when the bag was off: the first coming after the first time, within a day. */
export function instantAfter(first: Instant, { field, time }: Omit<WrittenTime, 'day'>, rule: TimeRule): Instant {
  const at = lastShownAt(rule.timeZone, time, shifted(first, 2 * halfADay - 1));
  if (at < first || at > rule.now) throw new BadForm([{ field, code: 'written-ahead', facts: {} }]);
  return at;
}

/** @throws {Refusal} `paper-row-not-there` */
export function refuseNoSuchRow({ number, rowCount }: PaperFormFacts, row: number): void {
  if (row < 1 || row > rowCount) throw new Refusal('paper-row-not-there', { sheet: number, row, rowCount });
}

/** Where an entry from paper stands, and who wrote it. */
export interface Written {
  readonly sheet: string;
  readonly row: number;
  readonly at: Instant;
  readonly writtenBy: string | null;
}

/**
 * Runs a command for what was written on paper. What it refuses for a row that is keyed in already is refused as that:
 * the first entry of the row is the reason.
 *
 * @throws {Refusal} `paper-row-keyed`, and those of the command
 */
export async function asWritten<Answer>(
  from: ReadFrom,
  asked: Asked,
  { written, action }: { readonly written: Written; readonly action: string },
  run: (asked: Asked) => Promise<Answer>,
): Promise<Answer> {
  try {
    return await run({ ...asked, happening: { how: 'paper', ...written } });
  } catch (error) {
    if (error instanceof Refusal) await refuseKeyedRow(from, { siteId: asked.actor.siteId, ...written }, action);
    throw error;
  }
}
