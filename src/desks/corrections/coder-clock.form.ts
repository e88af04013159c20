import { correctionReasons, type CorrectionReason } from '../../journal/void-fact.js';
import { mostOffsetSeconds, mostUncertaintySeconds } from '../../plant/machine.form.js';
import { ChoiceField, InstantField, TextField, WholeField } from '../../platform/web/fields.js';
import { BadForm } from '../../platform/refusal.js';

const dayAndTime = { pattern: /^\d{4}-\d\d-\d\d[T ]\d\d:\d\d(:\d\d)?$/, form: 'day-and-time', most: 19 } as const;

/** What a coder's clock and the right one showed at the same moment. */
export class CompareClockForm {
  @TextField({ ...dayAndTime, says: 'What the coder showed' })
  shownAt!: string;

  @TextField({ ...dayAndTime, optional: true, says: 'What the right clock showed; absent: the server’s now' })
  referenceAt?: string | null;

  @WholeField({ most: mostUncertaintySeconds })
  uncertaintySeconds!: number;

  @InstantField({ optional: true })
  validFrom?: string | null;

  @TextField({ optional: true, most: 300 })
  reason?: string | null;
}

export class ClockCorrectionForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ ...dayAndTime, optional: true })
  shownAt?: string | null;

  @TextField({ ...dayAndTime, optional: true })
  referenceAt?: string | null;

  @WholeField({ optional: true, most: mostUncertaintySeconds })
  uncertaintySeconds?: number | null;

  @InstantField({ optional: true })
  validFrom?: string | null;

  @TextField({ most: 300 })
  reason!: string;
}

/**
 * How far the coder is ahead: both times as the clocks show them, so that a change of the clocks between makes no odds.
 *
 * @throws {BadForm} for what is no time, and for clocks that are years apart
 */
export function secondsAhead(shownAt: string, referenceAt: string): number {
  const seconds = Math.round(
    (wallMilliseconds('shownAt', shownAt) - wallMilliseconds('referenceAt', referenceAt)) / 1000,
  );
  if (Math.abs(seconds) <= mostOffsetSeconds) return seconds;
  throw new BadForm([{ field: 'shownAt', code: 'field-not-local-time', facts: {} }]);
}

function wallMilliseconds(field: string, text: string): number {
  const milliseconds = Date.parse(`${text.replace(' ', 'T')}Z`);
  if (Number.isNaN(milliseconds)) throw new BadForm([{ field, code: 'field-not-local-time', facts: {} }]);
  return milliseconds;
}
