import { findBadge } from '../../people/credentials.js';
import { namesOf } from '../../people/people.js';
import { tidyBadgeText } from '../../people/secrets.js';
import { sha256 } from '../../platform/canonical-text.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** Whose badge was scanned; null: it is no badge. What was scanned is shown nowhere. */
export async function badgeNameOf(from: ReadFrom, siteId: string, text: string): Promise<string | null> {
  const tidy = tidyBadgeText(text);
  if (!/^[A-Z2-7]{26}$/.test(tidy)) return null;
  const known = await findBadge(from, siteId, sha256(tidy));
  return known === null ? null : ((await namesOf(from, [known.personId])).get(known.personId) ?? null);
}
