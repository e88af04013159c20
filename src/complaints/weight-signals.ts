import { shortPackTimes } from '../fill-weight/kept/short-pack-times.js';
import { weighedMinutesOf, type RunMinutes } from '../fill-weight/kept/weighed-minutes.js';
import { runOf } from '../packing/packing-runs.js';
import type { RunSpan } from '../packing/run-lists.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { happenings, nearOf } from './line-signals.js';
import type { Signal, SignalsAsked } from './signal.js';

/**
 * What the weigher weighed in the minutes of the packs, against every stretch of as many minutes in which the same format
 * was packed, and how often a pack beyond T2 went on near them. Nothing of runs that no weigher weighed.
 */
export async function weightSignals(from: ReadFrom, asked: SignalsAsked): Promise<readonly Signal[]> {
  const signals: Signal[] = [];
  for (const runId of new Set(asked.thread.packed.map((part) => part.runId))) {
    const run = await runOf(from, runId);
    const sameFormat = idsOf(asked.runs.filter(({ formatId }) => formatId === run.formatId));
    const weighed = await weighedMinutesOf(from, [...new Set([...sameFormat, runId])]);
    const own = weighed.get(runId);
    if (own === undefined) continue;
    const href = `/runs/${runId}/weights`;
    for (const part of asked.thread.packed) {
      if (part.runId !== runId || part.when === null) continue;
      const signal = meanOfMinutes(own, [...weighed.values()], { ...part.when, nominalGrams: run.nominalGrams });
      if (signal !== null) signals.push({ ...signal, href, facts: { ...signal.facts, run: run.number } });
    }
    const ofLine = asked.runs.filter(({ lineId }) => lineId === run.lineId);
    const common = { near: nearOf(asked, runId), ofLine, line: run.lineCode, href };
    signals.push(happenings('stand-out-short-packs', common, await shortPackTimes(from, idsOf(ofLine))));
  }
  return signals;
}

const idsOf = (runs: readonly RunSpan[]): readonly string[] => runs.map(({ id }) => id);

const minuteMilliseconds = 60_000;

interface PackedMinutes {
  readonly fromAt: Instant;
  readonly untilAt: Instant;
  readonly nominalGrams: number;
}

/** Null where no pack was weighed in the minutes. */
function meanOfMinutes(
  own: RunMinutes,
  all: readonly RunMinutes[],
  { fromAt, untilAt, nominalGrams }: PackedMinutes,
): Omit<Signal, 'href'> | null {
  const [first, last] = [fromAt, untilAt].map((at) => Math.floor(Date.parse(at) / minuteMilliseconds));
  const minutes = own.minutes.filter(({ minute }) => minute >= (first ?? 0) && minute <= (last ?? 0));
  const mean = meanGrams(minutes, nominalGrams);
  if (mean === null) return null;
  return {
    ...{ code: 'stand-out-minute-weights', unit: 'grams', tail: 'both', value: mean },
    facts: { packs: minutes.reduce((sum, { packCount }) => sum + packCount, 0), from: fromAt, until: untilAt },
    reference: all.flatMap((run) => meansOfParts(run.minutes, minutes.length, nominalGrams)),
  };
}

/** The means of a run's minutes, so many together. What is left at its end is no full part and left out. */
function meansOfParts(minutes: RunMinutes['minutes'], minuteCount: number, nominalGrams: number): readonly number[] {
  const parts = Math.floor(minutes.length / minuteCount);
  return Array.from({ length: parts }, (_, place) => {
    return meanGrams(minutes.slice(place * minuteCount, (place + 1) * minuteCount), nominalGrams) ?? nominalGrams;
  });
}

function meanGrams(minutes: RunMinutes['minutes'], nominalGrams: number): number | null {
  const packCount = minutes.reduce((sum, minute) => sum + minute.packCount, 0);
  const errors = minutes.reduce((sum, { errorSumMilligrams }) => sum + errorSumMilligrams, 0);
  return packCount === 0 ? null : nominalGrams + errors / packCount / 1000;
}
