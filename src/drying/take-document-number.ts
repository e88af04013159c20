import { makeDocumentNumber } from '../core/identifiers/document-number.js';
import { localMomentAt } from '../core/shift-calendar/local-time.js';
import { takeNumber } from '../platform/database/number-series.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { siteOf } from '../plant/plant-facts.js';

/** What is numbered by year, and the letters that its numbers begin with. */
const prefixes = {
  'dryer-run': 'DR',
  'goods-receipt': 'GR',
  sample: 'S',
  hold: 'H',
  'paper-form': 'PF',
  complaint: 'C',
  recall: 'RC',
  exercise: 'EX',
} as const;
export type NumberedKind = keyof typeof prefixes;

/**
 * Takes the next number of a kind in the plant's own year, such as `S-2026-000123`.
 *
 * Units that take a number of the same series wait for each other, so what is read after it can't change before the
 * commit by another unit of the same kind.
 */
export async function takeDocumentNumber(tx: Tx, siteId: string, kind: NumberedKind, at: string): Promise<string> {
  const { timeZone } = await siteOf(tx, siteId);
  const year = Number(localMomentAt(timeZone, at).on.slice(0, 4));
  const serial = await takeNumber(tx, siteId, `${kind}-${year}`);
  return makeDocumentNumber({ prefix: prefixes[kind], year, serial });
}
