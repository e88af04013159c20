import type { FastifyReply, FastifyRequest } from 'fastify';
import { Refusal } from '../platform/refusal.js';
import { cookieOf, deviceCookie, sessionCookie } from './cookies.js';
import type { SignInPlace } from './sign-in.js';

/** Where a request comes from, as signing in looks at it. */
export function placeOf(request: FastifyRequest): SignInPlace {
  return {
    address: request.ip,
    deviceToken: cookieOf(request, deviceCookie),
    previousToken: cookieOf(request, sessionCookie),
  };
}

/** Adds, to an answer that came after too many attempts, when the next one will be looked at. */
export async function withRetryAfter<Answer>(reply: FastifyReply, work: Promise<Answer>): Promise<Answer> {
  try {
    return await work;
  } catch (error) {
    if (isTooMany(error)) void reply.header('Retry-After', String(error.facts['seconds']));
    throw error;
  }
}

/** Whether somebody tried too often. */
export function isTooMany(error: unknown): error is Refusal {
  return error instanceof Refusal && error.code === 'too-many-attempts';
}
