import { recognise } from '../core/identifiers/recognise.js';
import { findBag } from '../drying/bulk-bags.js';
import { findPallet } from '../pallets/pallet-list.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { isId } from '../platform/is-id.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { notePrefix } from './deliveries.js';

/** A pallet or a whole bag that was scanned. */
export interface ScannedUnit {
  readonly kind: 'pallet' | 'bulk-bag';
  readonly id: string;
  /** SSCC of a pallet, short number of a bag. */
  readonly name: string;
  readonly placeId: string | null;
}

/**
 * What a scan at the dock means: a pallet or a bag by its SSCC, alone or among other elements, or a bag by its number.
 *
 * @throws {Refusal} `scan-is-no-unit` for everything else, also for an SSCC that nothing of the house carries
 */
export async function findUnit(from: ReadFrom, siteId: string, scan: string): Promise<ScannedUnit> {
  const text = scan.trim();
  const keys = isId(text) ? [text] : keysIn(text);
  for (const key of keys) {
    const found = (await orNull(findPallet(from, siteId, key))) ?? (await orNull(findBag(from, siteId, key)));
    if (found === null) continue;
    return 'number' in found
      ? { kind: 'bulk-bag', id: found.id, name: found.number, placeId: found.placeId }
      : { kind: 'pallet', id: found.id, name: found.sscc, placeId: found.placeId };
  }
  throw new Refusal('scan-is-no-unit', { scan: text.slice(0, 60) });
}

/** Pack codes and dates play no part here, so any year and no pattern does. */
const houseCodes = {
  currentYear: 2026,
  deliveryPrefix: notePrefix,
  patterns: [],
  window: { earliestOn: '2026-01-01', latestOn: '2026-12-31' },
};

function keysIn(text: string): readonly string[] {
  return recognise(text, houseCodes).flatMap((candidate) => {
    if (candidate.kind === 'logistic-unit') return [candidate.sscc];
    return candidate.kind === 'bag' ? [candidate.bagNumber] : [];
  });
}

async function orNull<Found>(search: Promise<Found>): Promise<Found | null> {
  try {
    return await search;
  } catch (error) {
    if (error instanceof NotFound) return null;
    throw error;
  }
}
