import { clocksOfCoder, type ComparedClock } from '../plant/coder-clocks.js';
import { coderOf, lineOf, uncomparedCoderClock } from '../plant/plant-facts.js';
import type { EntryDraft } from '../journal/entry-draft.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { ClockReading } from './window-in-ranges.js';

/** For some time a coder's clock is taken to have stood otherwise: what it printed is read as another time. */
export interface ChangedReading {
  readonly coderId: string;
  readonly coderCode: string;
  readonly lineId: string;
  readonly lineCode: string;
  /** In truth, by the plant's clock. */
  readonly fromAt: Instant;
  /** Null: it goes on. */
  readonly untilAt: Instant | null;
  readonly before: ClockReading;
  readonly after: ClockReading;
}

/** The comparisons of the coders that an entry speaks of, by one side's records. */
export type CoderClocks = ReadonlyMap<string, readonly ComparedClock[]>;

export async function clocksOfEntry(from: ReadFrom, { subject, touches = [] }: EntryDraft): Promise<CoderClocks> {
  const coders = [subject, ...touches].filter(({ kind }) => kind === 'coder');
  const clocks = new Map<string, readonly ComparedClock[]>();
  for (const { id } of coders) clocks.set(id, await clocksOfCoder(from, id));
  return clocks;
}

/** Where the comparisons of both sides tell otherwise of a coder's clock. */
export async function changedReadings(
  from: ReadFrom,
  { before, after }: { readonly before: CoderClocks; readonly after: CoderClocks },
): Promise<readonly ChangedReading[]> {
  const changed: ChangedReading[] = [];
  for (const [coderId, clocks] of after) {
    const stretches = stretchesOf(before.get(coderId) ?? [], clocks);
    if (stretches.length === 0) continue;
    const { code: coderCode, lineId } = await coderOf(from, coderId);
    const { code: lineCode } = await lineOf(from, lineId);
    changed.push(...stretches.map((stretch) => ({ coderId, coderCode, lineId, lineCode, ...stretch })));
  }
  return changed;
}

type Stretch = Pick<ChangedReading, 'fromAt' | 'untilAt' | 'before' | 'after'>;

/** Times in which two lists of comparisons give different readings; what goes on alike is one stretch. */
export function stretchesOf(before: readonly ComparedClock[], after: readonly ComparedClock[]): readonly Stretch[] {
  const begins = [...new Set([...before, ...after].map(({ validFrom }) => validFrom))].sort();
  const stretches: Stretch[] = [];
  for (const [place, fromAt] of begins.entries()) {
    const untilAt = begins[place + 1] ?? null;
    const [was, is] = [readingAt(before, fromAt), readingAt(after, fromAt)];
    if (isSame(was, is)) continue;
    const last = stretches.at(-1);
    if (last?.untilAt === fromAt && isSame(last.before, was) && isSame(last.after, is)) {
      stretches[stretches.length - 1] = { ...last, untilAt };
    } else {
      stretches.push({ fromAt, untilAt, before: was, after: is });
    }
  }
  return stretches;
}

function readingAt(clocks: readonly ComparedClock[], at: Instant): ClockReading {
  const { offsetSeconds, uncertaintySeconds } =
    clocks.filter(({ validFrom }) => validFrom <= at).at(-1) ?? uncomparedCoderClock;
  return { offsetSeconds, uncertaintySeconds };
}

function isSame(one: ClockReading, other: ClockReading): boolean {
  return one.offsetSeconds === other.offsetSeconds && one.uncertaintySeconds === other.uncertaintySeconds;
}
