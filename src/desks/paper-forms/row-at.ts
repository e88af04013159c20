import type { Asked } from '../../journal/entry-draft.js';
import { personOf } from '../../people/people.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';
import { runOfLineAt } from '../../packing/packing-runs.js';
import { hopperOfLine } from '../../plant/plant-facts.js';
import type { FormKind } from './form-kinds.js';
import type { FormRow } from './form-rows.js';
import { clockTime, notKnown, type WrittenRowForm } from './paper-form.form.js';
import { findPaperForm, type PaperForm } from './paper-forms.js';
import { instantOfWritten, lastTimeOf, refuseNoSuchRow, type TimeRule, type Written } from './row-asked.js';

/** A row that is being keyed in, and by what its times are understood. */
export interface RowAt {
  readonly asked: Asked;
  readonly sheet: PaperForm;
  readonly row: FormRow;
  readonly rule: TimeRule;
}

/** Which row, and who keys it in when. */
export interface RowWanted {
  readonly asked: Asked;
  readonly number: string;
  readonly row: number;
  readonly timeZone: string;
  readonly now: Instant;
}

/**
 * @throws {Refusal} `paper-row-not-there`, `paper-sheet-of-another-kind`
 * @throws {NotFound} `paper-form`
 */
export async function rowAt(from: ReadFrom, kind: FormKind, wanted: RowWanted): Promise<RowAt> {
  const { asked, number, row, timeZone, now } = wanted;
  const sheet = await findPaperForm(from, asked.actor.siteId, number);
  refuseNoSuchRow(sheet.facts, row);
  if (sheet.facts.kind !== kind) throw new Refusal('paper-sheet-of-another-kind', { sheet: number });
  const found = sheet.rows[row - 1];
  if (found === undefined) throw new RangeError('a sheet with fewer rows than it says');
  return { asked, sheet, row: found, rule: { timeZone, until: lastTimeOf(sheet.rows, row, now), now } };
}

/**
 * What a row says of itself: its time, and who wrote it.
 *
 * @throws {BadForm} for a time that cannot be
 * @throws {NotFound} `person`
 */
export async function writtenOf(from: ReadFrom, at: RowAt, form: WrittenRowForm): Promise<Written> {
  const { asked, sheet, row, rule } = at;
  const { siteId, personId } = asked.actor;
  const writtenBy = form.writtenBy === personId ? null : form.writtenBy;
  if (writtenBy !== null && writtenBy !== notKnown) await personOf(from, siteId, writtenBy);
  const time = { field: form.day == null ? 'time' : 'day', time: clockTime(form.time), day: form.day ?? null };
  return { sheet: sheet.facts.number, row: row.row, at: instantOfWritten(time, rule), writtenBy };
}

/**
 * The hopper that the sheet's line was fed by then.
 *
 * @throws {Refusal} `line-has-no-hopper`
 */
export async function hopperThen(from: ReadFrom, { sheet }: RowAt, at: Instant): Promise<string> {
  const hopperId = await hopperOfLine(from, sheet.lineId, at);
  if (hopperId === null) throw new Refusal('line-has-no-hopper', { line: sheet.facts.lineCode });
  return hopperId;
}

/**
 * The run that the sheet's line packed then.
 *
 * @throws {Refusal} `no-run-then`
 */
export async function runThen(from: ReadFrom, { sheet }: RowAt, at: Instant): Promise<string> {
  const run = await runOfLineAt(from, sheet.lineId, at);
  if (run === null) throw new Refusal('no-run-then', { line: sheet.facts.lineCode, at });
  return run.number;
}

/** The same person with a key of its own for the second entry of a row. */
export function andThen(asked: Asked): Asked {
  return { ...asked, key: asked.key === null ? null : `${asked.key.slice(0, 58)}-again` };
}
