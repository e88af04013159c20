import { Inject, Injectable } from '@nestjs/common';
import { mayDo, type Permission } from '../platform/actor.js';
import { sha256 } from '../platform/canonical-text.js';
import { Clock, shifted, type Instant } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { latenessLimits } from '../platform/occurred-at.js';
import { BadForm, NotPermitted } from '../platform/refusal.js';
import { speak } from '../platform/sentences/language.js';
import type { Barred, HouseRequest } from '../platform/web/request.js';
import { cookieOf, deviceCookie } from './cookies.js';
import { instantOfHeader } from './device-time.js';
import { findQueueing, type Queueing } from './queue-proofs.js';

/** What a route states of itself. */
export interface StatedRoute {
  readonly mayBeQueued: boolean;
  readonly permission: Permission | 'anyone' | undefined;
}

/**
 * The gate for what waited on a device: a request with `Queue-Proof` comes in here, and by nothing else that it carries
 * but its device's cookie. Its header cannot be sent by a page from elsewhere, so it needs no form's token. It acts as
 * the proof's person, with what that person may do now. What that person may not do, or did not do, is let in marked,
 * so that it is kept and not lost.
 */
@Injectable()
export class QueueGate {
  constructor(
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  /** @throws {NotPermitted} `queue-proof-not-for-this`, `queue-proof-not-known` */
  async letIn(request: HouseRequest, proof: string, route: StatedRoute): Promise<void> {
    if (!route.mayBeQueued || request.method !== 'POST') throw new NotPermitted('queue-proof-not-for-this');
    const deviceToken = cookieOf(request, deviceCookie);
    if (deviceToken === null) throw new NotPermitted('queue-proof-not-known');
    const shown = { proofHash: sha256(proof), deviceTokenHash: sha256(deviceToken) };
    const queueing = await findQueueing(this.reader, shown, this.clock.now());
    if (queueing === null) throw new NotPermitted('queue-proof-not-known');
    actAs(request, queueing);
    const at = happenedAt(request);
    request.happening = { how: 'queued', at, sheet: null, row: null, writtenBy: null };
    delete request.seen;
    delete request.previewed;
    delete request.headers['preview-mark'];
    request.barred = barredBy(queueing, route, at);
  }
}

/** The proof in a request's header; null where there is none. */
export function queueProofOf({ headers }: HouseRequest): string | null {
  const proof = headers['queue-proof'];
  return typeof proof === 'string' && proof.trim() !== '' ? proof.trim().slice(0, 200) : null;
}

function actAs(request: HouseRequest, queueing: Queueing): void {
  const { siteId, personId, deviceId, roles, siteName, timeZone, name, language, deviceCode } = queueing;
  request.actor = { siteId, personId, deviceId, roles };
  request.viewer = {
    ...{ actor: request.actor, name, siteName, timeZone, language, deviceCode, proof: 'badge' },
    ...{ csrfToken: '', path: request.url.split('?')[0] ?? '/', said: null, journalSequence: 0 },
  };
  speak(language);
}

/** When it happened by the server's clock: the device's own time, less what its clock is ahead now. */
function happenedAt(request: HouseRequest): Instant {
  const byDevice = instantOfHeader(request.headers['happened-at']);
  if (byDevice === null) throw new BadForm([{ field: 'Happened-At', code: 'happened-at-missing', facts: {} }]);
  return shifted(byDevice, -(request.deviceOffsetMilliseconds ?? 0));
}

/** Why what was entered cannot be this person's; null where it can. */
function barredBy(queueing: Queueing, { permission }: StatedRoute, at: Instant): Barred | null {
  const doubt = latenessLimits.aheadMinutes * 60_000;
  const { issuedAt, signedOutAt } = queueing;
  if (at < shifted(issuedAt, -doubt) || at > shifted(signedOutAt, doubt)) {
    return { code: 'entry-outside-proof', facts: { happenedAt: at, issuedAt, signedOutAt } };
  }
  const isAllowed = permission === 'anyone' || (permission !== undefined && mayDo(queueing.roles, permission));
  return isAllowed ? null : { code: 'not-permitted', facts: {} };
}
