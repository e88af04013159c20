import { say } from '../../platform/sentences/sentences.js';
import { gramsText } from '../weight-text.js';
import type { SetFigures } from './add-line-setting.js';
import type { SettingInForce } from './line-settings.js';

const figures = [
  ['setpointMilligrams', 'setting-setpoint'],
  ['rejectBelowMilligrams', 'setting-reject-below'],
  ['rejectAboveMilligrams', 'setting-reject-above'],
] as const;

/** `setpoint 1 003.50 g, pushed out below 985.00 g`: what was changed. */
export function figuresText(set: SetFigures): string {
  return figures
    .flatMap(([name, code]) => {
      const milligrams = set[name];
      return milligrams === null ? [] : [say(code, { grams: gramsText(milligrams, 2) })];
    })
    .join(', ');
}

/** What is in force, as one text; null: nothing was recorded. */
export function inForceText({ setpoint, rejectBelow, rejectAbove }: SettingInForce): string | null {
  const text = figuresText({
    setpointMilligrams: setpoint?.milligrams ?? null,
    rejectBelowMilligrams: rejectBelow?.milligrams ?? null,
    rejectAboveMilligrams: rejectAbove?.milligrams ?? null,
  });
  return text === '' ? null : text;
}
