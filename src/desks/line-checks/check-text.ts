import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import type { TestPiece } from '../../line-checks/check-words.js';
import type { DueCheck } from '../../line-checks/due-checks.js';
import { decimalText } from '../../platform/sentences/decimal-text.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';

/** Thousandths as people read them: `2`, `2.5`, `2 000.4`. */
export function thousandthsText(thousandths: number): string {
  const whole = Math.trunc(Math.abs(thousandths) / 1000);
  const rest = String(Math.abs(thousandths) % 1000)
    .padStart(3, '0')
    .replace(/0+$/, '');
  const text = countText(whole) + (rest === '' ? '' : decimalText(`.${rest}`));
  return thousandths < 0 ? `\u2212${text}` : text;
}

/** What a piece is, in one line. */
export function pieceText(piece: TestPiece): string | undefined {
  if (piece.sphereMicrometres !== null) {
    const material = say(`test-material-${piece.material ?? 'ferrous'}`);
    return say('piece-sphere', { material, millimetres: thousandthsText(piece.sphereMicrometres) });
  }
  if (piece.knownMilligrams === null) return undefined;
  const facts = {
    known: thousandthsText(piece.knownMilligrams),
    allowed: thousandthsText(piece.allowedMilligrams ?? 0),
  };
  return say('piece-known', facts);
}

/** When a check is due, in words and minutes. */
export function dueText(due: DueCheck): string {
  const minutes = Math.abs(due.minutesLeft ?? 0);
  if (due.word === 'later') return say('due-in', { minutes: countText(minutes) });
  if (due.word === 'due' || due.word === 'overdue') return say(`due-${due.word}`, { minutes: countText(minutes) });
  return say(`due-${due.word}`);
}

/** How often a plan asks for its check. */
export function oftenText(plan: Pick<CheckPlanRow, 'everyMinutes' | 'events'>): string {
  const parts = [
    ...(plan.everyMinutes === null ? [] : [say('every-minutes', { minutes: countText(plan.everyMinutes) })]),
    ...plan.events.map((event) => say(`check-event-${event}`)),
  ];
  return parts.length === 0 ? say('check-on-demand') : parts.join(' · ');
}
