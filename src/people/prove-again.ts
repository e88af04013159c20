import { Inject, Injectable } from '@nestjs/common';
import type { Actor } from '../platform/actor.js';
import { sha256 } from '../platform/canonical-text.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { NotPermitted, Refusal } from '../platform/refusal.js';
import { findBadge, findSecret, type KnownCredential } from './credentials.js';
import type { Place } from './own-password.js';
import { fitsSecret } from './password-hash.js';
import { tidyBadgeText } from './secrets.js';
import { Throttle } from './throttle.js';

/** What somebody shows to prove once more who they are. It is never stored, logged, or part of what a key stands for. */
export interface ShownProof {
  readonly password?: string | null | undefined;
  readonly badge?: string | null | undefined;
  readonly pin?: string | null | undefined;
}

/** What is asked for, by where the person is. */
export type ProofWay = 'password' | 'badge-and-pin';

/**
 * Asks somebody who is signed in to prove once more who they are, before they decide something grave. A session on a
 * shared device may have been left open: there it takes badge *and* PIN; at a desk or from afar the password.
 * Refusals: `proof-needed`, `proof-failed`, `too-many-attempts`.
 */
@Injectable()
export class ProveAgain {
  constructor(
    private readonly throttle: Throttle,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  /** What this person is asked for, here. */
  async wayOf({ deviceId, siteId }: Actor): Promise<ProofWay> {
    const [device] = await this.reader.sql<{ kind: string }>`
      SELECT "kind" FROM "device" WHERE "id" = ${deviceId} AND "site_id" = ${siteId}`;
    return device?.kind === 'shared-tablet' || device?.kind === 'handheld' ? 'badge-and-pin' : 'password';
  }

  async execute(actor: Actor, proof: ShownProof, { address }: Place): Promise<void> {
    const { siteId, personId, deviceId } = actor;
    if (personId === null) throw new NotPermitted('not-permitted');
    const way = await this.wayOf(actor);
    refuseWithout(way, proof);
    const kind = way === 'password' ? 'password' : 'pin';
    const secret = await findSecret(this.reader, siteId, personId, kind);
    const attempt = { person: secret?.personCode ?? personId, deviceId, address };
    await this.throttle.take(attempt);
    // Computed whatever the badge says, so that an answer takes as long for a wrong badge as for a wrong PIN.
    const fits = await fitsSecret(secret?.secretHash ?? null, (kind === 'pin' ? proof.pin : proof.password) ?? '');
    const isTheirs = way === 'password' || (await this.badgeOf(siteId, proof))?.personId === personId;
    if (!fits || !isTheirs) throw new Refusal('proof-failed');
    await this.throttle.giveBack(attempt);
  }

  private badgeOf(siteId: string, { badge }: ShownProof): Promise<KnownCredential | null> {
    return findBadge(this.reader, siteId, sha256(tidyBadgeText(badge ?? '')));
  }
}

function refuseWithout(way: ProofWay, { password, badge, pin }: ShownProof): void {
  const isShown = way === 'password' ? isText(password) : isText(badge) && isText(pin);
  if (!isShown) throw new Refusal('proof-needed');
}

function isText(shown: string | null | undefined): boolean {
  return typeof shown === 'string' && shown !== '';
}
