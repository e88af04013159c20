import { instantOfLocal, NoSuchTime } from '../../platform/web/local-time.js';

/** In which order a date's numbers stand: year, month and day. */
export const dayOrders = ['ymd', 'dmy', 'mdy'] as const;
export type DayOrder = (typeof dayOrders)[number];

const centisecondsOfDay = 8_640_000;
const centisecondsOfQuarter = 90_000;
/** A clock that went back jumps by more than this; packs that come out of order do not. Our own value, no source. */
const mostBackwards = 180_000;

const parts: Readonly<Record<DayOrder, RegExp>> = {
  ymd: /^(?<year>\d{4})([-./])(?<month>\d{1,2})\2(?<day>\d{1,2})$/,
  dmy: /^(?<day>\d{1,2})([-./])(?<month>\d{1,2})\2(?<year>\d{4}|\d{2})$/,
  mdy: /^(?<month>\d{1,2})([-./])(?<day>\d{1,2})\2(?<year>\d{4}|\d{2})$/,
};
const clockParts = /^(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?(?: ?([AP])M)?$/i;

/**
 * Reads times without an offset, as a machine's own clock shows them in a zone. One reader serves one file, from its first
 * line to its last: in the hour that comes twice when clocks go back, the order of the lines tells which is meant.
 */
export class LocalClock {
  private last = Number.NaN;
  private lastDay = '';
  private lastDayCentiseconds = Number.NaN;
  private readonly quarters = new Map<number, readonly [earlier: number, later: number]>();

  constructor(
    private readonly order: DayOrder,
    private readonly timeZone: string,
  ) {}

  /** A date with a time behind it, parted by a space or `T`; hundredths of a second since 1970 UTC, else NaN. */
  instantOf(text: string): number {
    const parting = text.search(/[ T]/);
    if (parting < 0) return Number.NaN;
    return this.instantOfWall(this.dayOf(text.slice(0, parting)) + this.clockOf(text.slice(parting + 1).trim()));
  }

  /** The begin of a day, as if the zone were UTC. NaN for what no calendar has. */
  dayOf(text: string): number {
    if (text === this.lastDay) return this.lastDayCentiseconds;
    this.lastDay = text;
    this.lastDayCentiseconds = dayAt(parts[this.order].exec(text)?.groups);
    return this.lastDayCentiseconds;
  }

  /** The time within a day: `7:41`, `07:41:03.41`, `7:41:03 PM`. */
  clockOf(text: string): number {
    const [, hours, minutes, seconds = '0', fraction = '', half] = clockParts.exec(text) ?? [];
    if (hours === undefined || Number(minutes) > 59 || Number(seconds) > 59) return Number.NaN;
    const hour = hourOf(Number(hours), half?.toUpperCase());
    const hundredths = Number(fraction.padEnd(2, '0').slice(0, 2));
    return hour * 360_000 + Number(minutes) * 6000 + Number(seconds) * 100 + hundredths;
  }

  /** What the zone's clocks showed as an instant; NaN for an hour that they left out. */
  instantOfWall(wall: number): number {
    if (Number.isNaN(wall)) return Number.NaN;
    const start = Math.floor(wall / centisecondsOfQuarter) * centisecondsOfQuarter;
    const [earlier, later] = this.quarterAt(start);
    const [first, second] = [earlier + wall - start, later + wall - start];
    // A line far before the one above it is of the second time round.
    const least = this.last - mostBackwards;
    const at = first < least && second >= least ? second : first;
    if (!Number.isNaN(at)) this.last = at;
    return at;
  }

  /** Zones change at a quarter of an hour, so one question serves all lines of it. */
  private quarterAt(start: number): readonly [number, number] {
    let found = this.quarters.get(start);
    if (found === undefined) {
      const text = new Date(start * 10).toISOString().slice(0, 16);
      found = [this.asked(text, 'earlier'), this.asked(text, 'later')];
      this.quarters.set(start, found);
    }
    return found;
  }

  private asked(text: string, which: 'earlier' | 'later'): number {
    try {
      return Date.parse(instantOfLocal(text, this.timeZone, which)) / 10;
    } catch (error) {
      if (error instanceof NoSuchTime) return Number.NaN;
      throw error;
    }
  }
}

function dayAt(found: Record<string, string> | undefined): number {
  if (found === undefined) return Number.NaN;
  const [year, month, day] = [Number(found['year']), Number(found['month']), Number(found['day'])];
  const full = year < 100 ? 2000 + year : year;
  const at = Date.UTC(full, month - 1, day);
  const isOfCalendar = full >= 1970 && full < 2200 && month <= 12 && new Date(at).getUTCDate() === day;
  return isOfCalendar && month >= 1 ? (at / 86_400_000) * centisecondsOfDay : Number.NaN;
}

function hourOf(hour: number, half: string | undefined): number {
  if (half === undefined) return hour <= 23 ? hour : Number.NaN;
  if (hour < 1 || hour > 12) return Number.NaN;
  return (hour % 12) + (half === 'P' ? 12 : 0);
}
