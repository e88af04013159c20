import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Config } from '../config.js';
import { knownLanguage, type Language } from '../sentences/language.js';

/** The language of whoever signed in last on this device, or chose one on its sign-in page. It says nothing of anybody. */
const languageCookie = 'packthread-language';

const keptSeconds = 400 * 86_400;

/**
 * What to speak to somebody who is not known yet: what the device spoke last, else what the browser asks for. Programs
 * get English until it is known for whom they ask.
 */
export function languageBeforeSignIn({ url, cookies, headers }: FastifyRequest): Language {
  if (url.startsWith('/api/')) return 'en';
  return knownLanguage(cookies[languageCookie]) ?? firstKnown(headers['accept-language'] ?? '') ?? 'en';
}

/** The device speaks on in the language of who is signed in, when nobody is any more. */
export function followLanguage(request: FastifyRequest, reply: FastifyReply, { config, language }: Following): void {
  if (request.cookies[languageCookie] !== language) keepLanguage(reply, config, language);
}

interface Following {
  readonly config: Config;
  readonly language: Language;
}

export function keepLanguage(reply: FastifyReply, config: Config, language: Language): void {
  const flags = { path: '/', httpOnly: true, sameSite: 'lax', secure: config.secureCookies } as const;
  void reply.setCookie(languageCookie, language, { ...flags, maxAge: keptSeconds });
}

/** The best of an Accept-Language header that the house speaks: `es-MX,es;q=0.9,en;q=0.5` is `es`. */
function firstKnown(accepted: string): Language | null {
  const wishes = accepted
    .slice(0, 500)
    .split(',')
    .map((wish) => {
      const [tag = '', ...parameters] = wish.trim().toLowerCase().split(';');
      const quality = parameters.map((one) => /^\s*q=([\d.]+)$/.exec(one)?.[1]).find((found) => found !== undefined);
      return { language: knownLanguage(tag.split('-')[0]), weight: quality === undefined ? 1 : Number(quality) };
    })
    .filter(({ language, weight }) => language !== null && weight > 0)
    .sort((one, other) => other.weight - one.weight);
  return wishes[0]?.language ?? null;
}
