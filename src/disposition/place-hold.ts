import { leaveReachJob } from '../open-points/reach-job.js';
import { takeDocumentNumber } from '../drying/take-document-number.js';
import { raisePoint } from '../open-points/raise-point.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Hold } from './hold.entity.js';
import { partOf, refuseUnusablePart } from './hold-part.js';
import type { HoldPart, HoldRow, HoldScope } from './standings.js';

/** A hold to be placed. Whoever calls has made sure that the thing is there. */
export interface HoldDraft extends Partial<HoldPart> {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly scope: HoldScope;
  readonly reason: string;
  readonly placedAt: string;
}

/**
 * Places a hold and opens a point for quality, since only a quality officer may set its class; until then it is a
 * safety hold.
 *
 * @throws {Refusal} `hold-range-not-usable`, `hold-times-not-usable`
 */
export async function placeHold(tx: Tx, change: { readonly recordedAt: string }, draft: HoldDraft): Promise<HoldRow> {
  const { siteId, scope, reason, placedAt } = draft;
  const part = partOf(draft);
  refuseUnusablePart(scope, part);
  const id = draft.nextId();
  const number = await takeDocumentNumber(tx, siteId, 'hold', change.recordedAt);
  const kept = { id, number, scopeKind: scope.kind, scopeId: scope.id, ...part, reason, placedAt };
  await tx.insert(Hold, { ...kept, siteId, voidedBy: null });
  await raisePoint(tx, {
    id: draft.nextId(),
    siteId,
    cause: 'hold-without-class',
    facts: { hold: number },
    subject: { kind: 'hold', id },
    role: 'quality-officer',
    at: change.recordedAt,
  });
  await leaveReachJob(tx, { id: draft.nextId(), siteId, holdId: id, at: change.recordedAt });
  return { ...kept, hazard: 'safety', isNarrowed: false };
}
