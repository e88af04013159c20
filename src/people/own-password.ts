import { Inject, Injectable } from '@nestjs/common';
import type { Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { NotPermitted, Refusal } from '../platform/refusal.js';
import { findSecret, type KnownCredential } from './credentials.js';
import { fitsSecret } from './password-hash.js';
import { Throttle } from './throttle.js';

/** Where somebody is, as the throttle counts it. */
export interface Place {
  readonly address: string;
}

/** A password that somebody has just shown or set: a session may begin on it. */
export interface ProvenPassword {
  readonly personId: string;
  readonly credentialId: string;
  readonly secretHash: string;
}

/** Asks somebody who is signed in for their password again, before what they prove themselves by is changed. */
@Injectable()
export class OwnPassword {
  constructor(
    private readonly throttle: Throttle,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  /** @throws {Refusal} `password-wrong`, `too-many-attempts` */
  async confirm(actor: Actor, password: string, { address }: Place): Promise<KnownCredential> {
    if (actor.personId === null) throw new NotPermitted('not-permitted');
    const known = await findSecret(this.reader, actor.siteId, actor.personId, 'password');
    const attempt = { person: known?.personCode ?? actor.personId, deviceId: actor.deviceId, address };
    await this.throttle.take(attempt);
    const fits = await fitsSecret(known?.secretHash ?? null, password);
    if (known === null || !fits) throw new Refusal('password-wrong');
    await this.throttle.giveBack(attempt);
    return known;
  }
}
