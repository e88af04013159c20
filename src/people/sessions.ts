import { Inject, Injectable } from '@nestjs/common';
import csrf from '@fastify/csrf';
import { sha256 } from '../platform/canonical-text.js';
import { Clock, shifted, type Instant } from '../platform/clock.js';
import { CONFIG, type Config } from '../platform/config.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { Credential } from './credential.entity.js';
import { endSessions } from './end-sessions.js';
import { RoleHolding } from './role-holding.entity.js';
import { newToken } from './secrets.js';
import { Session } from './session.entity.js';

const tokens = csrf();

/** A form's token: it proves that the form was made here, for this session. */
export function csrfTokenOf(csrfSecret: string): string {
  return tokens.create(csrfSecret);
}

/** Whether a form's token was made for this session. */
export function isCsrfToken(csrfSecret: string, token: unknown): boolean {
  return typeof token === 'string' && tokens.verify(csrfSecret, token);
}

/** Somebody who has just proved who they are, and by which credential. */
export interface Proven {
  readonly siteId: string;
  readonly personId: string;
  readonly proof: Session['proof'];
  readonly credentialId: string;
  readonly secretHash: string;
  readonly deviceId: string | null;
}

/** A session that has begun. The token is in nobody's hands but the person's. */
export interface Begun {
  readonly token: string;
  readonly endsAt: Instant;
}

/** Sessions begin and end here. They are no facts: no journal, and rows go when they are over. */
@Injectable()
export class Sessions {
  constructor(
    private readonly units: UnitOfWork,
    private readonly clock: Clock,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  /**
   * Begins a session with a token of its own, whatever cookie was sent; the session of that cookie ends.
   *
   * @throws {Refusal} `sign-in-failed` when the credential was changed while it was looked at, `person-has-no-role`
   */
  async begin(proven: Proven, previousToken: string | null): Promise<Begun> {
    const token = newToken();
    const startedAt = this.clock.now();
    const endsAt = shifted(startedAt, this.config.sessionHours * 3_600_000);
    await this.units.run(async (tx) => {
      const { credentialId, secretHash, ...session } = proven;
      const stillFits = await tx.findOne(Credential, { id: credentialId, secretHash });
      if (stillFits === null) throw new Refusal('sign-in-failed');
      const roles = await tx.find(RoleHolding, { personId: proven.personId, voidedBy: null });
      if (roles.length === 0) throw new Refusal('person-has-no-role');
      await tx.sql`DELETE FROM "session" WHERE "ends_at" <= ${startedAt}`;
      if (previousToken !== null) await endSessions(tx, { tokenHash: sha256(previousToken) }, startedAt);
      await tx.insert(Session, {
        ...session,
        tokenHash: sha256(token),
        csrfSecret: tokens.secretSync(),
        startedAt,
        endsAt,
      });
    });
    return { token, endsAt };
  }

  /** Ends one session: the person signs out. */
  async end(tokenHash: string): Promise<void> {
    await this.units.run(async (tx) => {
      await endSessions(tx, { tokenHash }, this.clock.now());
    });
  }
}
