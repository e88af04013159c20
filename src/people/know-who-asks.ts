import { Inject, Injectable } from '@nestjs/common';
import { sha256 } from '../platform/canonical-text.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { speak } from '../platform/sentences/language.js';
import type { HouseRequest } from '../platform/web/request.js';
import { saidBefore } from '../platform/web/said.js';
import { cookieOf, sessionCookie } from './cookies.js';
import { deviceOffsetMilliseconds } from './device-time.js';
import { csrfTokenOf } from './sessions.js';
import { findDeviceByToken, findSignedIn, type KnownDevice, type SignedIn } from './who-asks.js';

/** Finds who asks, a person by session or a machine by token, and writes it on the request. */
@Injectable()
export class KnowWhoAsks {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
  ) {}

  /** Notes how far the device's clock is from the house's, where the request tells. */
  compareClocks(request: HouseRequest): void {
    request.deviceOffsetMilliseconds = deviceOffsetMilliseconds(request.headers['device-time'], this.clock.now());
  }

  /** The session of the person who asks; null where a machine asks or nobody is known. */
  async look(request: HouseRequest): Promise<SignedIn | null> {
    const bearer = bearerOf(request);
    if (bearer === null) return this.lookAtSession(request);
    await this.lookAtMachine(request, bearer);
    return null;
  }

  private async lookAtSession(request: HouseRequest): Promise<SignedIn | null> {
    const token = cookieOf(request, sessionCookie);
    if (token === null) return null;
    const session = await findSignedIn(this.reader, sha256(token), this.clock.now());
    if (session === null) return null;
    const { siteId, personId, deviceId, roles, siteName, timeZone, language } = session;
    request.sessionHash = session.tokenHash;
    request.actor = { siteId, personId, deviceId, roles };
    request.stillHolds = async () =>
      (await findSignedIn(this.reader, session.tokenHash, this.clock.now()))?.personId === personId;
    request.viewer = {
      actor: request.actor,
      name: session.name ?? session.personCode,
      siteName,
      timeZone,
      language,
      csrfToken: csrfTokenOf(session.csrfSecret),
      path: pathOf(request),
      said: saidBefore(request),
      deviceCode: session.deviceCode,
      proof: session.proof,
      journalSequence: session.journalSequence,
    };
    speak(language);
    return session;
  }

  private async lookAtMachine(request: HouseRequest, token: string): Promise<void> {
    const tokenHash = sha256(token);
    const device = await findDeviceByToken(this.reader, tokenHash);
    if (device?.kind !== 'machine') return;
    request.stillHolds = async () => (await findDeviceByToken(this.reader, tokenHash))?.id === device.id;
    request.actor = { siteId: device.siteId, personId: null, deviceId: device.id, roles: ['device'] };
    request.viewer = viewerOfMachine(request.actor, device, pathOf(request));
  }
}

function viewerOfMachine(
  actor: NonNullable<HouseRequest['actor']>,
  { code, siteName, timeZone }: KnownDevice,
  path: string,
): NonNullable<HouseRequest['viewer']> {
  const nothingSaid = { said: null, deviceCode: code, proof: 'machine', journalSequence: 0 } as const;
  return { actor, name: code, siteName, timeZone, language: 'en', csrfToken: '', path, ...nothingSaid };
}

function pathOf(request: HouseRequest): string {
  return request.url.split('?')[0] ?? '/';
}

function bearerOf(request: HouseRequest): string | null {
  const [, token] = /^Bearer +(\S{1,200})$/i.exec(request.headers.authorization ?? '') ?? [];
  return token ?? null;
}
