import { randomUUID } from 'node:crypto';
import type { Role } from '../../src/platform/actor.js';
import { signInWalkers } from '../walkers.js';

/** Somebody signed in: the headers of every request of theirs. */
export type Headers = Readonly<Record<string, string>>;

/** The headers of a change: each has a key of its own. */
export function changing(own: Headers): Headers {
  return { ...own, 'content-type': 'application/json', 'idempotency-key': randomUUID() };
}

/** One person of each of these roles, with what lets their changes in. */
export async function signInRoles(address: string, ...roles: readonly Role[]): Promise<readonly Headers[]> {
  const walkers = await signInWalkers(address);
  return Promise.all(
    roles.map(async (role) => {
      const cookie = walkers.find((walker) => walker.role === role)?.cookie ?? '';
      const answer = await fetch(`${address}/api/sessions/me`, { headers: { cookie } });
      const { csrfToken } = (await answer.json()) as { csrfToken: string };
      return { cookie, 'x-csrf-token': csrfToken, accept: 'application/json' };
    }),
  );
}
