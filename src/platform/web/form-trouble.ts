import { BadForm, NotFound, Refusal, type SentenceFacts } from '../refusal.js';
import { say } from '../sentences/sentences.js';
import { sayLocally } from './local-text.js';

/** Why a form is shown again: what was entered, and what is wrong with it, in the reader's language. */
export interface FormTrouble {
  readonly status: 404 | 409 | 422;
  /** The code of what was refused, for pages that offer a way on; `bad-form` for wrong fields. */
  readonly code: string;
  readonly facts: SentenceFacts;
  /** One sentence for the whole form. */
  readonly sentence: string;
  /** By field: what is wrong, and what would be right. */
  readonly fields: Readonly<Record<string, string>>;
  /** By field: what was entered, as text. Never a secret. */
  readonly entered: Readonly<Record<string, string | readonly string[]>>;
}

/** Fields that hold a secret: never shown again, carried on or kept. */
export const secretFields: ReadonlySet<string> = new Set(['password', 'oldPassword', 'newPassword', 'pin', 'badge']);

/** What to show of an error with the form again; null for what no entering of other values would help. */
export function formTroubleOf(error: unknown, body: unknown, timeZone: string): FormTrouble | null {
  const entered = enteredIn(body);
  if (error instanceof BadForm) {
    const fields = Object.fromEntries(error.problems.map(({ field, code, facts }) => [field, say(code, facts)]));
    return { status: 422, code: 'bad-form', facts: {}, sentence: say('form-look-again'), fields, entered };
  }
  if (error instanceof NotFound) {
    const facts = { kind: say(error.kind), asked: error.asked.slice(0, 60) };
    return { status: 404, code: 'not-found', facts, sentence: say('not-found', facts), fields: {}, entered };
  }
  if (!(error instanceof Refusal)) return null;
  const { code, facts } = error;
  return { status: 409, code, facts, sentence: sayLocally(code, facts, timeZone), fields: {}, entered };
}

function enteredIn(body: unknown): FormTrouble['entered'] {
  const fields = Object.entries((body ?? {}) as Record<string, unknown>).filter(([name]) => !secretFields.has(name));
  const shown = fields.map(([name, value]) => [name, shownValue(value)] as const);
  return Object.fromEntries(shown.filter((field): field is [string, string | string[]] => field[1] !== null));
}

function shownValue(value: unknown): string | readonly string[] | null {
  if (typeof value === 'string') return value.slice(0, 2000);
  return Array.isArray(value) ? value.filter((one): one is string => typeof one === 'string') : null;
}
