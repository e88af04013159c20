import { raisePoint } from '../open-points/raise-point.js';
import type { Subject } from '../journal/entry-draft.js';
import type { Role } from '../platform/actor.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal, type SentenceFacts } from '../platform/refusal.js';

/** A rule of the house that an act breaks: its code as a refusal, and as the cause of a point where it has happened. */
export interface BrokenRule {
  readonly code: string;
  readonly facts: SentenceFacts;
}

/** What is to be looked at when a rule was broken all the same. */
export interface BrokenBy {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly subject: Subject;
  readonly role?: Role;
  readonly at: Instant;
  /** What its sentences say beside what is wrong. */
  readonly facts?: SentenceFacts;
}

/** @throws {Refusal} the first broken rule, unless it has happened already */
export function refuseBroken(broken: readonly BrokenRule[], hasHappened: boolean): void {
  const [first] = broken;
  if (first !== undefined && !hasHappened) throw new Refusal(first.code, first.facts);
}

/** What has happened is recorded; each rule that it broke is a point (cause: `happened-` and the rule's code). */
export async function pointAtBroken(tx: Tx, broken: readonly BrokenRule[], by: BrokenBy): Promise<void> {
  for (const { code, facts } of broken) {
    const { siteId, subject, at, role = 'quality-officer' } = by;
    const point = { id: by.nextId(), siteId, cause: `happened-${code}`, facts: { ...facts, ...by.facts } };
    await raisePoint(tx, { ...point, subject, role, at });
  }
}
