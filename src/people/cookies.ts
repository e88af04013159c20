import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Config } from '../platform/config.js';

/** Who is signed in. */
export const sessionCookie = 'packthread-session';

/** Which enrolled device this is. */
export const deviceCookie = 'packthread-device';

/** Browsers keep a cookie no longer than this; each sign-in on the device renews it. */
const deviceCookieSeconds = 400 * 86_400;

/** Lax, so that a scanned Digital Link opens the thread; a form from elsewhere carries no cookie, and no token. */
const flags = (config: Config): { path: string; httpOnly: true; sameSite: 'lax'; secure: boolean } => ({
  path: '/',
  httpOnly: true,
  sameSite: 'lax',
  secure: config.secureCookies,
});

/** What a cookie holds, or null where it is absent or no token. */
export function cookieOf(request: FastifyRequest, name: string): string | null {
  const value = request.cookies[name];
  return value !== undefined && /^[\w-]{20,200}$/.test(value) ? value : null;
}

export function giveSessionCookie(reply: FastifyReply, config: Config, token: string): void {
  void reply.setCookie(sessionCookie, token, { ...flags(config), maxAge: config.sessionHours * 3600 });
}

export function takeSessionCookie(reply: FastifyReply, config: Config): void {
  void reply.clearCookie(sessionCookie, flags(config));
}

export function takeDeviceCookie(reply: FastifyReply, config: Config): void {
  void reply.clearCookie(deviceCookie, flags(config));
}

export function giveDeviceCookie(reply: FastifyReply, config: Config, token: string): void {
  void reply.setCookie(deviceCookie, token, { ...flags(config), maxAge: deviceCookieSeconds });
}
