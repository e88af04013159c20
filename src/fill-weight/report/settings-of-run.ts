import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { say } from '../../platform/sentences/sentences.js';
import {
  settingAt,
  settingsBetween,
  type LineSettingRow,
  type SettingInForce,
} from '../line-settings/line-settings.js';
import { figuresText, inForceText } from '../line-settings/setting-texts.js';
import type { RunStretch } from '../run-weights/run-events.js';

/** What the line of a run was set to at its start, and what was changed after it while it ran. */
export interface SettingsOfRun {
  readonly atStart: SettingInForce;
  readonly changes: readonly LineSettingRow[];
}

export async function settingsOfRun(from: ReadFrom, { run, untilAt }: RunStretch): Promise<SettingsOfRun> {
  const { lineId, formatId, startedAt } = run;
  const changes = await settingsBetween(from, { lineId, formatId, fromAt: startedAt, untilAt });
  return {
    atStart: await settingAt(from, { lineId, formatId }, startedAt),
    // What was changed at the very start is in force at the start, and is not said twice.
    changes: changes.filter(({ changedAt }) => changedAt !== startedAt),
  };
}

/** In sentences: first what was set at the start, then each change with its reason. */
export function settingTexts({ atStart, changes }: SettingsOfRun, local: (at: Instant) => string): readonly string[] {
  const what = inForceText(atStart);
  return [
    what === null ? say('weight-report-setting-unknown') : say('weight-report-setting-at-start', { what }),
    ...changes.map((change) =>
      say('weight-report-setting-changed', { at: local(change.changedAt), what: figuresText(change), why: change.why }),
    ),
  ];
}
