import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import { plansOfLine } from '../../line-checks/check-plans.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { inPaperLanguage } from '../../platform/printing/paper-language.js';
import { Refusal } from '../../platform/refusal.js';
import type { Language } from '../../platform/sentences/language.js';
import { say } from '../../platform/sentences/sentences.js';
import { oftenText, pieceText } from '../line-checks/check-text.js';
import type { PrintedCheck } from './form-kinds.js';

/** The checks of a line as a sheet names them: each by a letter, with when it is due and what is put through or looked at. */
export async function checksToPrint(
  from: ReadFrom,
  line: { readonly id: string; readonly code: string },
  { at, language }: { readonly at: Instant; readonly language: Language },
): Promise<readonly PrintedCheck[]> {
  const plans = await plansOfLine(from, line.id, at);
  if (plans.length === 0) throw new Refusal('line-has-no-check-plan', { line: line.code });
  return inPaperLanguage(() => plans.map(printedCheck), language);
}

function printedCheck(plan: CheckPlanRow, place: number): PrintedCheck {
  const letter = (at: number): string => String.fromCharCode('A'.charCodeAt(0) + at);
  const { planId, kind, station, formatName, testPieces, needsSecondPerson } = plan;
  return {
    ...{
      planId,
      letter: (place < 26 ? '' : letter(Math.floor(place / 26) - 1)) + letter(place % 26),
      kind,
      needsSecondPerson,
    },
    title: [`${station} (${say(`check-kind-${kind}`)})`, ...(formatName === null ? [] : [formatName])].join(' · '),
    oftenText: oftenText(plan),
    pieces: testPieces.map((piece) => [piece.says, pieceText(piece)].filter((part) => part !== undefined).join(', ')),
  };
}
