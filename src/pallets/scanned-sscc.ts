import { readElementString } from '../core/identifiers/element-string.js';
import { elementValue } from '../core/identifiers/elements.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { findPallet } from './pallet-list.js';
import type { PalletRow } from './pallet-rows.js';

/**
 * The pallet whose label was scanned: its SSCC alone, or with what else the symbol holds.
 *
 * @throws {NotFound} `pallet`
 */
export async function palletOfLabel(
  from: ReadFrom,
  siteId: string,
  { text, currentYear }: { readonly text: string; readonly currentYear: number },
): Promise<PalletRow> {
  const reading = readElementString(text, { currentYear });
  const sscc = reading.ok ? elementValue(reading.elements, '00') : null;
  return findPallet(from, siteId, sscc ?? text);
}
