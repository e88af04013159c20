import { BadForm, NotFound, Refusal } from '../platform/refusal.js';
import { hasSentence } from '../platform/sentences/sentences.js';
import type { Barred } from '../platform/web/request.js';

/** The catalogue's word for what an entry by this route is: after the last part of its address that is no id. */
export function whatWasMeant(route: string): string {
  const parts = (route.split(' ')[1] ?? '').split('/').filter((part) => part !== '' && !part.startsWith(':'));
  const code = `kept-what-${parts.at(-1) ?? ''}`;
  return hasSentence(code) ? code : 'kept-what-entry';
}

/** The sentence that says why an entry was kept: one for whoever settles it where there is one, else the refusal's. */
export function whyKept(code: string): string {
  const own = `kept-why-${code}`;
  return hasSentence(own) ? own : code;
}

/** What may have gone into a hopper, or not: quality's to judge. */
const tips: ReadonlySet<string> = new Set(['tips', 'tip', 'late', 'off', 'one-of-several', 'rework-bin']);

/** Who is asked to settle an entry by this route. */
export function settlerOf(route: string): 'quality-officer' | 'line-lead' {
  return tips.has(whatWasMeant(route).replace('kept-what-', '')) ? 'quality-officer' : 'line-lead';
}

/** Waiting a moment helps: what is sent again then may be taken. */
const passing: ReadonlySet<string> = new Set([
  'still-being-recorded',
  'key-used-for-other-content',
  'too-many-attempts',
]);

/** Why an entry cannot be taken as it stands; null where it is not the entry's fault, and trying again may help. */
export function whyNotTaken(error: unknown): Barred | null {
  if (error instanceof Refusal) return passing.has(error.code) ? null : { code: error.code, facts: error.facts };
  if (error instanceof NotFound) {
    return { code: 'kept-not-found', facts: { kind: error.kind, asked: error.asked.slice(0, 60) } };
  }
  if (!(error instanceof BadForm)) return null;
  const keyless = error.problems.some(({ code }) => code === 'key-missing');
  const fields = error.problems.map(({ field }) => field).join(', ');
  return keyless ? null : { code: 'kept-bad-form', facts: { fields } };
}
