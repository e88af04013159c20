import { Inject, Injectable } from '@nestjs/common';
import type { Actor } from '../platform/actor.js';
import { sha256 } from '../platform/canonical-text.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';
import { findBadge, findPassword, findSecret, type KnownCredential } from './credentials.js';
import type { Place } from './own-password.js';
import { fitsSecret } from './password-hash.js';
import { personOf, type PersonRow } from './people.js';
import { ProveAgain } from './prove-again.js';
import { tidyBadgeText } from './secrets.js';
import { Throttle } from './throttle.js';

/** What a second person shows beside somebody who is signed in. Never stored, logged, or part of what a key stands for. */
export interface OtherProof {
  readonly badge?: string | null | undefined;
  /** With a PIN: who it is. */
  readonly person?: string | null | undefined;
  readonly pin?: string | null | undefined;
  /** With a password: the person's code. */
  readonly code?: string | null | undefined;
  readonly password?: string | null | undefined;
}

/**
 * A second person proves who they are on the same device, without ending the session of the first: by badge or PIN on a
 * shared tablet or handheld, by code and password elsewhere.
 * Refusals: `other-proof-needed`, `other-proof-failed`, `other-is-same`, `too-many-attempts`.
 */
@Injectable()
export class ProveOther {
  constructor(
    private readonly throttle: Throttle,
    private readonly again: ProveAgain,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  /** @returns the second person, who is not the first */
  async execute(actor: Actor, proof: OtherProof, { address }: Place): Promise<PersonRow> {
    const isShared = (await this.again.wayOf(actor)) === 'badge-and-pin';
    const way = wayOf(proof, isShared);
    if (way === null) throw new Refusal('other-proof-needed');
    const known = await this.lookUp(actor.siteId, way, proof);
    const person = way === 'badge' ? null : (known?.personCode ?? typed(proof));
    const attempt = { person, deviceId: actor.deviceId, address };
    await this.throttle.take(attempt);
    const secret = (way === 'pin' ? proof.pin : proof.password) ?? '';
    const fits = way === 'badge' ? known !== null : await fitsSecret(known?.secretHash ?? null, secret);
    if (!fits || known === null) throw new Refusal('other-proof-failed');
    await this.throttle.giveBack(attempt);
    if (known.personId === actor.personId) throw new Refusal('other-is-same');
    return personOf(this.reader, actor.siteId, known.personId);
  }

  private async lookUp(siteId: string, way: Way, proof: OtherProof): Promise<KnownCredential | null> {
    if (way === 'badge') return findBadge(this.reader, siteId, sha256(tidyBadgeText(proof.badge ?? '')));
    if (way === 'pin') return findSecret(this.reader, siteId, proof.person ?? '', 'pin');
    const known = await findPassword(this.reader, typed(proof));
    return known?.siteId === siteId ? known : null;
  }
}

type Way = 'badge' | 'pin' | 'password';

function wayOf(proof: OtherProof, isShared: boolean): Way | null {
  if (isShared && isText(proof.badge)) return 'badge';
  if (isShared && isText(proof.person) && isText(proof.pin)) return 'pin';
  return isText(proof.code) && isText(proof.password) ? 'password' : null;
}

function typed(proof: OtherProof): string {
  return (proof.code ?? proof.person ?? '').trim().toLowerCase();
}

function isText(shown: string | null | undefined): boolean {
  return typeof shown === 'string' && shown !== '';
}
