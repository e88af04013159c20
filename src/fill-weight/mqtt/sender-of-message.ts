import type { Asked } from '../../journal/entry-draft.js';
import { millisecondsBetween, type Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';
import { packWeigherCalled, type PackWeigherRow } from '../pack-weighers.js';

/**
 * The weigher that a topic names, where whoever set it up said that it may send so.
 *
 * @throws {Refusal} `mqtt-weigher-unknown`, `mqtt-not-allowed`
 */
export async function senderCalled(from: ReadFrom, code: string): Promise<PackWeigherRow> {
  const named = code.slice(0, 40);
  const weigher = await packWeigherCalled(from, code);
  if (weigher === null) throw new Refusal('mqtt-weigher-unknown', { named });
  if (!weigher.takesMqtt) throw new Refusal('mqtt-not-allowed', { weigher: weigher.code });
  return weigher;
}

/** A weigher asks by a message: with the message's own id, and with the time of its clock when it sent. */
export function askedByMessage(
  { siteId, deviceId }: PackWeigherRow,
  { id, sentAt, now }: { readonly id: string | null; readonly sentAt: Instant | null; readonly now: Instant },
): Asked {
  return {
    actor: { siteId, personId: null, deviceId, roles: ['device'] },
    route: 'MQTT',
    key: id,
    deviceOffsetMilliseconds: sentAt === null ? null : millisecondsBetween(now, sentAt),
  };
}
