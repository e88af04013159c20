import type { RecallScopeKind } from '../../recalls/recall-words.js';
import type { RecallScopeForm } from '../../recalls/recall.form.js';
import { nameOfScope } from '../../recalls/recall-reach.js';
import type { RecallScopeRow } from '../../recalls/recalls.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { say } from '../../platform/sentences/sentences.js';
import { localText } from '../../platform/web/local-text.js';

const instant = String.raw`\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z`;

/** A thing that a recall is of, as an address holds it: `lot:…`, `packing-run:…@from~until`. */
export const scopeKeyPattern = new RegExp(
  String.raw`^(bulk-bag|lot|packing-run|dryer-shift|packing-shift):([0-9a-f-]{36})(?:@(${instant})(?:~(${instant}))?)?$`,
);

export function scopeKey({ scopeKind, scopeId, fromAt, untilAt }: RecallScopeRow): string {
  if (fromAt === null) return `${scopeKind}:${scopeId}`;
  return `${scopeKind}:${scopeId}@${fromAt}${untilAt === null ? '' : `~${untilAt}`}`;
}

/** The reverse of `scopeKey`; null for what is none. */
export function scopeOfKey(key: string): RecallScopeForm | null {
  const [, kind, scopeId, fromAt, untilAt] = scopeKeyPattern.exec(key) ?? [];
  if (kind === undefined || scopeId === undefined) return null;
  return { scopeKind: kind as RecallScopeKind, scopeId, fromAt: fromAt ?? null, untilAt: untilAt ?? null };
}

/** A thing that a recall is of, with what people call it. */
export interface NamedScope extends RecallScopeRow {
  readonly name: string;
}

export async function namedScopes(from: ReadFrom, scopes: readonly RecallScopeRow[]): Promise<readonly NamedScope[]> {
  const named: NamedScope[] = [];
  for (const scope of scopes) named.push({ ...scope, name: (await nameOfScope(from, scope)).name });
  return named;
}

/** What a recall is of, in one line. */
export function scopeText({ scopeKind, name, fromAt, untilAt }: NamedScope, timeZone: string): string {
  const what = say(`recall-of-${scopeKind}`, { name });
  if (fromAt === null || untilAt === null) return what;
  return `${what}, ${say('thread-from-until', { from: localText(fromAt, timeZone), until: localText(untilAt, timeZone) })}`;
}
