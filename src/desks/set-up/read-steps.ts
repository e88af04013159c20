import { decimalPlaces, toScaledInteger } from '../../core/units/decimals.js';
import { threeByEightShifts, twoByTwelveShifts } from '../../core/shift-calendar/common-patterns.js';
import type { ShiftDefinition } from '../../core/shift-calendar/shift-pattern.js';
import type { SpecificationLineForm } from '../../plant/grade.form.js';
import type { CheckPointForm } from '../../plant/rules.form.js';
import { BadForm } from '../../platform/refusal.js';
import { limitRows, type GradeStepForm, type ShiftsStepForm } from './set-up.form.js';

/** Shifts as they were chosen, beginning with the plant's production day. */
export function shiftsOf(form: ShiftsStepForm, productionDayStart: string): ShiftDefinition[] {
  if (form.pattern === 'three-by-eight') return startingAt(threeByEightShifts, productionDayStart);
  if (form.pattern === 'two-by-twelve') return startingAt(twoByTwelveShifts, productionDayStart);
  const lines = linesOf(form.own ?? '');
  if (lines.length === 0) throw new BadForm([{ field: 'own', code: 'field-missing', facts: {} }]);
  return lines.map((line, place) => {
    const [, code, name, startTime] = /^([A-Z0-9]{1,4})\s+(.{1,40}?)\s+((?:[01]\d|2[0-3]):[0-5]\d)$/.exec(line) ?? [];
    if (code === undefined || name === undefined || startTime === undefined) {
      const facts = { line: place + 1, text: line.slice(0, 60) };
      throw new BadForm([{ field: 'own', code: 'set-up-shift-line-wrong', facts }]);
    }
    return { code, name, startTime };
  });
}

/** The common patterns begin at 06:00; all their shifts move with the production day. */
function startingAt(shifts: readonly ShiftDefinition[], productionDayStart: string): ShiftDefinition[] {
  const by = minutesOf(productionDayStart) - minutesOf('06:00');
  return shifts.map((shift) => ({ ...shift, startTime: timeOf(minutesOf(shift.startTime) + by) }));
}

function minutesOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 60 + minutes;
}

function timeOf(minutes: number): string {
  const inDay = (minutes + 2880) % 1440;
  return `${String(Math.floor(inDay / 60)).padStart(2, '0')}:${String(inDay % 60).padStart(2, '0')}`;
}

/** The limits that were filled in; a row with a property but neither method nor limit was left alone. */
export function limitsOf(form: GradeStepForm): SpecificationLineForm[] {
  const lines = limitRows.flatMap((row): SpecificationLineForm[] => {
    const property = form[`property${row}`] ?? null;
    const method = form[`method${row}`] ?? null;
    const maximum = form[`maximum${row}`] ?? null;
    if (method === null && maximum === null) return [];
    if (property === null) throw missing(`property${row}`);
    if (method === null) throw missing(`method${row}`);
    return [{ property, method, required: true, maximum, minimum: null }];
  });
  if (lines.length === 0) throw missing('method1');
  return lines;
}

function missing(field: string): BadForm {
  return new BadForm([{ field, code: 'field-missing', facts: {} }]);
}

/** The points of a vehicle's check, each with a code made of its words. */
export function checkPointsOf(text: string): CheckPointForm[] {
  return linesOf(text).map((line, place) => {
    const words = line
      .normalize('NFD')
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^[^a-z]+|-+$/g, '');
    return { code: `${words.slice(0, 24).replace(/-$/, '') || 'point'}-${place + 1}`, text: line };
  });
}

function linesOf(text: string): string[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

/**
 * A decimal that was typed, as a whole number of milligrams: kilograms have six decimals, grams three.
 *
 * @throws {BadForm} where there are more, so that nothing is rounded silently
 */
export function milligramsOf(field: string, typed: string, places: 3 | 6): number {
  if (decimalPlaces(typed) > places) throw new BadForm([{ field, code: 'set-up-too-fine', facts: { places } }]);
  return toScaledInteger(typed, places);
}

/** The next free code of a row, such as `S2` behind `S1`. */
export function nextCode(letter: string, taken: readonly string[]): string {
  for (let number = 1; ; number += 1) {
    const code = `${letter}${number}`;
    if (!taken.includes(code)) return code;
  }
}
