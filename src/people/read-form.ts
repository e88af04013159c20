import { BadForm, Refusal } from '../platform/refusal.js';
import { say } from '../platform/sentences/sentences.js';
import { formPipe } from '../platform/web/check-form.js';
import { isTooMany } from './sign-in-place.js';

const pipe = formPipe();

/**
 * Checks a plain form in the controller's hands, so that a wrong one is shown again with what was entered.
 *
 * @throws {BadForm}
 */
export async function readForm<Form extends object>(form: new () => Form, body: unknown): Promise<Form> {
  return (await pipe.transform(body ?? {}, { type: 'body', metatype: form })) as Form;
}

/** Why a form is shown again: a sentence each, and the status of the answer. */
export interface Trouble {
  readonly status: 422 | 429;
  readonly sentences: readonly string[];
}

/** What to say above a form that is shown again; null for anything that no entering of other values would help. */
export function troubleOf(error: unknown): Trouble | null {
  if (error instanceof Refusal) {
    return { status: isTooMany(error) ? 429 : 422, sentences: [say(error.code, error.facts)] };
  }
  if (!(error instanceof BadForm)) return null;
  const sentences = error.problems.map(
    ({ field, code, facts }) => `${say(`people-field-${field}`)}: ${say(code, facts)}`,
  );
  return { status: 422, sentences };
}

/** What a text field of a plain form held, to be shown again. */
export function enteredText(body: unknown, field: string): string {
  const value = (body as Record<string, unknown> | null | undefined)?.[field];
  return typeof value === 'string' ? value.slice(0, 200) : '';
}
