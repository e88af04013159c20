import type { FastifyReply, FastifyRequest } from 'fastify';
import type { SentenceFacts } from '../refusal.js';
import type { Said } from './request.js';

/** Carries what a form brought about to the page that follows it. It lives until that page was made. */
const saidCookie = 'packthread-said';

/** Says a sentence on the next page. */
export function sayNext(reply: FastifyReply, said: Said): void {
  const value = Buffer.from(JSON.stringify([said.code, said.facts])).toString('base64url');
  if (value.length > 3000) return;
  void reply.setCookie(saidCookie, value, { path: '/', httpOnly: true, sameSite: 'lax', maxAge: 60 });
}

/** What the last form brought about, or null. Whatever a cookie holds is only ever shown as text. */
export function saidBefore(request: FastifyRequest): Said | null {
  const value = request.cookies[saidCookie];
  if (value === undefined || value === '') return null;
  try {
    const [code, facts] = JSON.parse(Buffer.from(value, 'base64url').toString('utf8')) as [unknown, unknown];
    if (typeof code !== 'string' || !/^[a-z][a-z0-9-]{1,80}$/.test(code)) return null;
    return { code, facts: plainFacts(facts) };
  } catch {
    return null;
  }
}

/** It was said: the page is made. */
export function forgetSaid(reply: FastifyReply): void {
  void reply.clearCookie(saidCookie, { path: '/' });
}

function plainFacts(facts: unknown): SentenceFacts {
  if (facts === null || typeof facts !== 'object') return {};
  const isPlain = (value: unknown): value is string | number => ['string', 'number'].includes(typeof value);
  return Object.fromEntries(
    Object.entries(facts).filter((fact): fact is [string, string | number] => isPlain(fact[1])),
  );
}
