import { countsInStretches } from '../core/statistics/unusual.js';
import { handSamplesOfRuns } from '../fill-weight/mean-nets.js';
import { rejectTimes, type RunSpan } from '../packing/run-lists.js';
import { runOf, stopsOf } from '../packing/packing-runs.js';
import { millisecondsBetween, shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { nearMilliseconds, type Signal, type SignalsAsked } from './signal.js';

/** Stops and rejects near the packs, and what was weighed nearest to them. */
export async function lineSignals(from: ReadFrom, asked: SignalsAsked): Promise<readonly Signal[]> {
  const signals: Signal[] = [];
  for (const runId of new Set(asked.thread.packed.map((part) => part.runId))) {
    const run = await runOf(from, runId);
    const ofLine = asked.runs.filter(({ lineId }) => lineId === run.lineId);
    const near = nearOf(asked, runId);
    const common = { near, ofLine, line: run.lineCode, href: `/runs/${runId}` };
    const stops = await stopsOf(from, idsOf(ofLine));
    signals.push(
      happenings(
        'stand-out-stops',
        common,
        stops.map(({ stoppedAt }) => stoppedAt),
      ),
    );
    signals.push(happenings('stand-out-rejects', common, await rejectTimes(from, idsOf(ofLine))));
    const sameFormat = asked.runs.filter(({ formatId }) => formatId === run.formatId);
    signals.push(
      ...(await weights(from, { runId, near, nominalGrams: run.nominalGrams, run: run.number }, sameFormat)),
    );
  }
  return signals;
}

interface Near {
  readonly fromAt: Instant;
  readonly untilAt: Instant;
}

/** From half an hour before the packs of a run until half an hour after. */
export function nearOf({ thread, window }: SignalsAsked, runId: string): Near {
  const times = thread.packed.flatMap((part) => (part.runId === runId ? (part.when ?? []) : []));
  const first = times.map(({ fromAt }) => fromAt).sort()[0] ?? window.fromAt;
  const last =
    times
      .map(({ untilAt }) => untilAt)
      .sort()
      .at(-1) ?? window.untilAt;
  return { fromAt: shifted(first, -nearMilliseconds), untilAt: shifted(last, nearMilliseconds) };
}

const idsOf = (runs: readonly RunSpan[]): readonly string[] => runs.map(({ id }) => id);

/** How often something happened near the packs, against every stretch of that length on the same line in the period. */
export function happenings(
  code: string,
  { near, ofLine, line, href }: { near: Near; ofLine: readonly RunSpan[]; line: string; href: string },
  times: readonly Instant[],
): Signal {
  const spans = ofLine.map(({ startedAt, endedAt }) => ({ from: Date.parse(startedAt), until: Date.parse(endedAt) }));
  const length = millisecondsBetween(near.fromAt, near.untilAt);
  return {
    ...{ code, facts: { line, from: near.fromAt, until: near.untilAt }, unit: 'times', href, tail: 'upper' },
    value: times.filter((at) => at >= near.fromAt && at <= near.untilAt).length,
    reference: countsInStretches(
      times.map((at) => Date.parse(at)),
      spans,
      length,
    ),
  };
}

interface Weighed {
  readonly runId: string;
  readonly run: string;
  readonly near: Near;
  readonly nominalGrams: number;
}

/** The hand samples of the run nearest to its packs, before and after, against all samples of the format. */
async function weights(
  from: ReadFrom,
  { runId, run, near, nominalGrams }: Weighed,
  sameFormat: readonly RunSpan[],
): Promise<readonly Signal[]> {
  const samples = await handSamplesOfRuns(from, idsOf(sameFormat));
  const own = samples.filter((sample) => sample.runId === runId);
  const before = own.filter(({ weighedAt }) => weighedAt <= near.untilAt).at(-1);
  const after = own.find(({ weighedAt }) => weighedAt > near.untilAt);
  const reference = samples.map(({ meanMilligrams }) => meanMilligrams / 1000);
  return [before, after].flatMap((sample) => {
    if (sample === undefined) return [];
    const facts = { run, at: sample.weighedAt, packs: sample.samplePackCount };
    const value = sample.meanMilligrams / 1000;
    const where = { unit: 'grams', href: `/runs/${runId}`, least: nominalGrams };
    return [{ code: 'stand-out-weight', facts, ...where, value, reference, tail: 'both' as const }];
  });
}
