import { Inject, Injectable } from '@nestjs/common';
import { sha256 } from '../platform/canonical-text.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';
import { findBadge, findPassword, findSecret, type KnownCredential } from './credentials.js';
import { fitsSecret } from './password-hash.js';
import { tidyBadgeText } from './secrets.js';
import type { SignInForm } from './session.form.js';
import { Sessions, type Begun } from './sessions.js';
import { Throttle } from './throttle.js';
import { findDeviceByToken, type KnownDevice } from './who-asks.js';

/** Where somebody signs in: the network address, the device's cookie and the cookie of a session before. */
export interface SignInPlace {
  readonly address: string;
  readonly deviceToken: string | null;
  readonly previousToken: string | null;
}

/**
 * Somebody proves who they are and a session begins. The answer to a failure does not tell what was wrong, and takes
 * as long for someone who is not known here.
 * Refusals: `too-many-attempts`, `device-not-enrolled` (badge or PIN elsewhere than on an enrolled tablet or handheld),
 * `sign-in-failed`, `person-has-no-role`.
 */
@Injectable()
export class SignIn {
  constructor(
    private readonly sessions: Sessions,
    private readonly throttle: Throttle,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async execute(form: SignInForm, place: SignInPlace): Promise<Begun> {
    const device = await this.deviceAt(place.deviceToken);
    if (form.proof !== 'password' && (device === null || !isShared(device))) throw new Refusal('device-not-enrolled');
    const known = await this.lookUp(form, device);
    const deviceId = device?.id ?? null;
    // A badge cannot be guessed, and names nobody who is to be locked out by wrong ones.
    const person = form.proof === 'badge' ? null : (known?.personCode ?? whoWasTyped(form));
    const attempt = { person, deviceId, address: place.address };
    await this.throttle.take(attempt);
    if (!(await isProven(form, known)) || known === null) throw new Refusal('sign-in-failed');
    const { id, secretHash, siteId, personId } = known;
    const proven = { siteId, personId, proof: form.proof, credentialId: id, secretHash, deviceId };
    const begun = await this.sessions.begin(proven, place.previousToken);
    await this.throttle.giveBack(attempt);
    return begun;
  }

  /** The enrolled device whose cookie was sent. A machine's token is no cookie. */
  async deviceAt(deviceToken: string | null): Promise<KnownDevice | null> {
    if (deviceToken === null) return null;
    const device = await findDeviceByToken(this.reader, sha256(deviceToken));
    return device === null || device.kind === 'machine' ? null : device;
  }

  private async lookUp(form: SignInForm, device: KnownDevice | null): Promise<KnownCredential | null> {
    if (form.proof === 'password') {
      const known = await findPassword(this.reader, whoWasTyped(form));
      // A device of one site must not come into the records of another.
      return device !== null && known?.siteId !== device.siteId ? null : known;
    }
    if (device === null) return null;
    return form.proof === 'pin'
      ? findSecret(this.reader, device.siteId, whoWasTyped(form), 'pin')
      : findBadge(this.reader, device.siteId, sha256(tidyBadgeText(form.badge ?? '')));
  }
}

/** A badge is found by its hash. A password or PIN is computed for those who are not known, too. */
async function isProven(form: SignInForm, known: KnownCredential | null): Promise<boolean> {
  if (form.proof === 'badge') return known !== null;
  return fitsSecret(known?.secretHash ?? null, (form.proof === 'pin' ? form.pin : form.password) ?? '');
}

/** Badge and PIN are for devices that people share on the floor. At a desk there is time for a password. */
export function isShared(device: KnownDevice): boolean {
  return device.kind === 'shared-tablet' || device.kind === 'handheld';
}

function whoWasTyped(form: SignInForm): string {
  return form.proof === 'pin' ? (form.person ?? '') : (form.code ?? '').toLowerCase();
}
