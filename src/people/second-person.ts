import { personOf } from './people.js';
import type { Actor } from '../platform/actor.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';

/**
 * A second person is somebody else, and known here.
 *
 * @throws {Refusal} `second-person-same`
 * @throws {NotFound} `person`
 */
export async function refuseSameOrUnknown(from: ReadFrom, actor: Actor, secondPersonId: string): Promise<void> {
  if (secondPersonId === actor.personId) throw new Refusal('second-person-same');
  await personOf(from, actor.siteId, secondPersonId);
}
