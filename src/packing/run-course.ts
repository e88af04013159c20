import type { Instant } from '../platform/clock.js';
import type { CountRow } from './packing-run-rows.js';

/** A count without its id: what answers are computed from. */
export type CountPoint = Omit<CountRow, 'id'>;

/** The counts of a run as they are stored in one row: the first, then the steps from one to the next. */
interface StoredCourse {
  readonly startsAt: Instant;
  readonly startCount: number;
  /** Milliseconds and packs by turns. A step back is negative. */
  readonly steps: readonly number[];
  /** A letter for each count. */
  readonly occasions: string;
}

const letters: Readonly<Record<CountPoint['occasion'], string>> = {
  start: 's',
  minute: 'm',
  tip: 't',
  pallet: 'p',
  stop: 'x',
  'coder-change': 'c',
  'film-change': 'f',
  handover: 'h',
  close: 'z',
  other: 'o',
};
const occasionOf = new Map(
  Object.entries(letters).map(([occasion, letter]) => [letter, occasion as keyof typeof letters]),
);

/** Writes the counts of one run, in the order of time, as one text. */
export function writeCourse(counts: readonly CountPoint[]): string {
  const [first] = counts;
  if (first === undefined) throw new RangeError('a course of no count');
  const steps: number[] = [];
  let [at, packCount] = [Date.parse(first.countedAt), first.packCount];
  for (const count of counts.slice(1)) {
    const nextAt = Date.parse(count.countedAt);
    steps.push(nextAt - at, count.packCount - packCount);
    [at, packCount] = [nextAt, count.packCount];
  }
  const occasions = counts.map(({ occasion }) => letters[occasion]).join('');
  const stored: StoredCourse = { startsAt: first.countedAt, startCount: first.packCount, steps, occasions };
  return JSON.stringify(stored);
}

/** The counts of one run in columns: what goes through thousands of them needs no object for each. */
export interface CountColumns {
  readonly runId: string;
  readonly packCounts: Float64Array;
  /** Milliseconds since 1970. */
  readonly countedAt: Float64Array;
  /** A letter for each count. */
  readonly occasions: string;
}

/** Reads the counts of one run back. */
export function readCourse(runId: string, course: string): CountPoint[] {
  return pointsOf(readColumns(runId, course));
}

/** The same in columns. */
export function readColumns(runId: string, course: string): CountColumns {
  const { startsAt, startCount, steps, occasions } = JSON.parse(course) as StoredCourse;
  const [packCounts, countedAt] = [new Float64Array(occasions.length), new Float64Array(occasions.length)];
  let [at, packCount] = [Date.parse(startsAt), startCount];
  for (let place = 0; place < occasions.length; place += 1) {
    if (place > 0) {
      at += steps[place * 2 - 2] ?? 0;
      packCount += steps[place * 2 - 1] ?? 0;
    }
    countedAt[place] = at;
    packCounts[place] = packCount;
  }
  return { runId, packCounts, countedAt, occasions };
}

export function columnsOf(runId: string, points: readonly CountPoint[]): CountColumns {
  return {
    runId,
    packCounts: Float64Array.from(points, ({ packCount }) => packCount),
    countedAt: Float64Array.from(points, ({ countedAt }) => Date.parse(countedAt)),
    occasions: points.map(({ occasion }) => letters[occasion]).join(''),
  };
}

export function pointsOf({ runId, packCounts, countedAt, occasions }: CountColumns): CountPoint[] {
  const texts = new InstantTexts();
  const points: CountPoint[] = [];
  for (let place = 0; place < occasions.length; place += 1) {
    const occasion = occasionOf.get(occasions.charAt(place));
    if (occasion === undefined) throw new RangeError(`a course with a count of ${occasions.charAt(place)}`);
    points.push({
      runId,
      packCount: packCounts[place] ?? 0,
      countedAt: texts.of(countedAt[place] ?? 0),
      occasion,
    });
  }
  return points;
}

/** A run starts with none and a device counts every minute; all other counts somebody read. */
export function isByHand({ occasions }: CountColumns, place: number): boolean {
  const letter = occasions.charAt(place);
  return letter !== letters.minute && letter !== letters.start;
}

const dayMilliseconds = 86_400_000;
const twoFigures = (number: number): string => (number < 10 ? `0${number}` : String(number));

/** Instants of few days written as text: thousands are read at once, and most are of whole minutes. */
export class InstantTexts {
  private day = Number.NaN;
  private begin = '';

  of(milliseconds: number): Instant {
    const day = Math.floor(milliseconds / dayMilliseconds);
    if (day !== this.day) {
      this.day = day;
      this.begin = new Date(milliseconds).toISOString().slice(0, 11);
    }
    const within = milliseconds - day * dayMilliseconds;
    const minutes = Math.floor(within / 60_000);
    const rest = within - minutes * 60_000;
    const seconds = rest === 0 ? '00.000' : (rest / 1000).toFixed(3).padStart(6, '0');
    return `${this.begin}${twoFigures(Math.floor(minutes / 60))}:${twoFigures(minutes % 60)}:${seconds}Z`;
  }
}
