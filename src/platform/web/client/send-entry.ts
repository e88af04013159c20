import type { Entry } from './entries.js';

/** What became of a sending. */
export type Outcome =
  | { readonly kind: 'accepted'; readonly next: string | null; readonly said: string | null; readonly isKept: boolean }
  | { readonly kind: 'refused'; readonly status: number; readonly problem: Problem }
  /** The session, or the proof, is over: the server does not know whose this is. */
  | { readonly kind: 'unknown-person' }
  /** No network, no answer in time, or a server that cannot answer now. */
  | { readonly kind: 'away' }
  | { readonly kind: 'fault' };

/** A problem document, as far as a form shows it. */
export interface Problem {
  readonly type: string;
  readonly detail: string;
  readonly fields?: readonly { readonly field: string; readonly detail: string }[];
}

const patienceMilliseconds = 8000;
/** A proxy without its server, or a server that stops or is asked too much: later it may be well. */
const passing = new Set([408, 425, 429, 502, 503, 504]);
const passingTypes = new Set(['problem:still-being-recorded', 'problem:too-many-requests']);

/** The session, or the proof of the entry, is good no more. */
const unknownTypes = new Set(['problem:form-not-ours', 'problem:queue-proof-not-known']);

/** Sends an entry, in the name of whoever is signed in (with the session's token) or by its proof, as happened. */
export async function sendEntry(
  entry: Entry,
  by: { readonly csrf: string } | { readonly proof: string },
): Promise<Outcome> {
  const body = new URLSearchParams(entry.fields);
  const headers = new Headers({
    Accept: 'application/json',
    'Content-Type': 'application/x-www-form-urlencoded;charset=UTF-8',
    'Idempotency-Key': entry.key,
    'Device-Time': new Date().toISOString(),
  });
  if ('proof' in by) {
    headers.set('Queue-Proof', by.proof);
    headers.set('Happened-At', entry.madeAt);
  } else {
    body.set('csrf', by.csrf);
  }
  let answer: Response;
  let content: unknown;
  try {
    const signal = AbortSignal.timeout(patienceMilliseconds);
    answer = await fetch(entry.action, { method: 'POST', headers, body: body.toString(), signal, redirect: 'error' });
    content = await answer.json();
  } catch {
    return { kind: 'away' };
  }
  return outcomeOf(answer.status, content);
}

function outcomeOf(status: number, content: unknown): Outcome {
  if (status >= 200 && status < 300) {
    const { next, said, kept, says } = content as { next?: string; said?: string; kept?: boolean; says?: string };
    return { kind: 'accepted', next: next ?? null, said: said ?? says ?? null, isKept: kept === true };
  }
  const problem = content as Problem;
  if (passing.has(status) || passingTypes.has(problem.type)) return { kind: 'away' };
  if (status === 401 || unknownTypes.has(problem.type)) return { kind: 'unknown-person' };
  return status >= 500 ? { kind: 'fault' } : { kind: 'refused', status, problem };
}
