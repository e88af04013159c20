import { filmRangesOfRuns, removalsOfRun, stopsOf } from '../packing/packing-runs.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { say } from '../platform/sentences/sentences.js';
import type { LineEvent, PackedPart } from './thread.js';

/** What stopped, was rejected, sampled or swept while the subject was packed, and the film it was packed in. */
export async function lineEvents(from: ReadFrom, parts: readonly PackedPart[]): Promise<LineEvent[]> {
  const runIds = [...new Set(parts.map((part) => part.runId))];
  const during = (runId: string, at: string): boolean =>
    parts.some(
      (part) => part.runId === runId && part.when !== null && at >= part.when.fromAt && at <= part.when.untilAt,
    );
  const stops = (await stopsOf(from, runIds))
    .filter((stop) => during(stop.runId, stop.stoppedAt))
    .map((stop): LineEvent => ({ kind: 'stop', at: stop.stoppedAt, says: stop.reason, grams: null }));
  const removals: LineEvent[] = [];
  for (const runId of runIds) {
    for (const { kind, removedAt, reason, grams } of await removalsOfRun(from, runId)) {
      if (during(runId, removedAt)) removals.push({ kind, at: removedAt, says: reason, grams });
    }
  }
  const films = (await filmRangesOfRuns(from, runIds))
    .filter((film) =>
      parts.some(
        (part) =>
          part.runId === film.runId && film.fromCount < part.toCount && (film.toCount ?? part.toCount) > part.fromCount,
      ),
    )
    .map((film): LineEvent => ({
      kind: 'film',
      at: film.fittedAt,
      says: say('line-film', { code: film.code, kind: film.kind }),
      grams: null,
    }));
  return [...stops, ...removals, ...films].sort((a, b) => (a.at < b.at ? -1 : 1));
}
