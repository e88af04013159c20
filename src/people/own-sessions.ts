import { Inject, Injectable } from '@nestjs/common';
import type { Actor } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { NotPermitted } from '../platform/refusal.js';
import { csrfTokenOf } from './sessions.js';
import { findSignedIn } from './who-asks.js';

/** A session as its holder sees it. */
export interface OwnSession {
  readonly person: { readonly id: string; readonly code: string; readonly name: string | null } | null;
  readonly siteId: string;
  readonly deviceId: string | null;
  readonly roles: Actor['roles'];
  readonly endsAt: string | null;
  readonly mustChangePassword: boolean;
  /** What changes take in the header x-csrf-token. A machine shows its own token each time and needs none. */
  readonly csrfToken: string | null;
}

export const ownSessionExample: OwnSession = {
  person: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10', code: 'jmoor', name: 'Jo Moor' },
  siteId: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a01',
  deviceId: null,
  roles: ['line-lead'],
  endsAt: '2026-03-12T20:00:00.000Z',
  mustChangePassword: false,
  csrfToken: 'vY4kRwXq-2mZ0wE8mJp0n6k7Jb3eVdY9bq0o0cJr1hXzK2',
};

/** Shows people their own session. */
@Injectable()
export class OwnSessions {
  constructor(
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  /** @throws {NotPermitted} when the session is over */
  async read(tokenHash: string): Promise<OwnSession> {
    const session = await findSignedIn(this.reader, tokenHash, this.clock.now());
    if (session === null) throw new NotPermitted('not-signed-in');
    const { personId, personCode, name, siteId, deviceId, roles, endsAt, mustChangePassword } = session;
    const person = { id: personId, code: personCode, name };
    const csrfToken = csrfTokenOf(session.csrfSecret);
    return { person, siteId, deviceId, roles, endsAt, mustChangePassword, csrfToken };
  }

  /** A machine has no session: it shows its token with each request. */
  ofMachine({ siteId, deviceId, roles }: Actor): OwnSession {
    return { person: null, siteId, deviceId, roles, endsAt: null, mustChangePassword: false, csrfToken: null };
  }
}
