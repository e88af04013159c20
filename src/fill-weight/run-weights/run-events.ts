import { checksOfLineSince } from '../../line-checks/line-checks.js';
import { stopsOf } from '../../packing/packing-runs.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { say } from '../../platform/sentences/sentences.js';
import { settingsBetween } from '../line-settings/line-settings.js';
import { figuresText } from '../line-settings/setting-texts.js';
import type { ChartEvent } from '../means-picture.js';
import { gramsText } from '../weight-text.js';
import type { TareChange } from './single-weights.js';

/** A run's line from its start to its close, or to now. */
export interface RunStretch {
  readonly run: RunRow;
  readonly untilAt: Instant;
}

/** What happened to the packs of a run, as a later room knows it. */
export type EventSource = (from: ReadFrom, stretch: RunStretch) => Promise<readonly ChartEvent[]>;

const sources: EventSource[] = [];

/** Rooms that stand later in the house say here what of theirs belongs under a run's weights. */
export function addEventSource(source: EventSource): void {
  sources.push(source);
}

/** What happened while the packs of a run were weighed, in the order of time. */
export async function eventsOfRun(
  from: ReadFrom,
  stretch: RunStretch,
  tareChanges: readonly TareChange[],
): Promise<readonly ChartEvent[]> {
  const events: ChartEvent[] = [...tareChanges.map(tareEvent), ...(await stopEvents(from, stretch))];
  events.push(...(await checkEvents(from, stretch)), ...(await settingEvents(from, stretch)));
  for (const source of sources) events.push(...(await source(from, stretch)));
  return events.sort((one, other) => (one.at < other.at ? -1 : 1));
}

function tareEvent({ at, addedMilligrams }: TareChange): ChartEvent {
  const sign = addedMilligrams > 0 ? '+' : '';
  return { at, text: say('run-weights-tare', { grams: sign + gramsText(addedMilligrams, 2) }) };
}

async function stopEvents(from: ReadFrom, { run }: RunStretch): Promise<readonly ChartEvent[]> {
  return (await stopsOf(from, [run.id])).map(({ stoppedAt, reason }) => ({
    at: stoppedAt,
    text: say('run-weights-stop', { reason: say(`stop-reason-${reason}`) }),
  }));
}

/** What the line was set to for the run's format while it ran. */
async function settingEvents(from: ReadFrom, { run, untilAt }: RunStretch): Promise<readonly ChartEvent[]> {
  const { lineId, formatId, startedAt: fromAt } = run;
  return (await settingsBetween(from, { lineId, formatId, fromAt, untilAt })).map((setting) => ({
    at: setting.changedAt,
    text: say('run-weights-setting', { what: figuresText(setting), why: setting.why }),
  }));
}

/** Checks of the run's line while it ran. */
async function checkEvents(from: ReadFrom, { run, untilAt }: RunStretch): Promise<readonly ChartEvent[]> {
  const checks = await checksOfLineSince(from, run.lineId, run.startedAt);
  return checks
    .filter(({ occurredAt, runId }) => occurredAt <= untilAt && (runId === null || runId === run.id))
    .map(({ occurredAt, station, passed }) => ({
      at: occurredAt,
      text: say(passed ? 'run-weights-check-passed' : 'run-weights-check-failed', { station }),
    }));
}
