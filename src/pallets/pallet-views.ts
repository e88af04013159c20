import { placeOf } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { say } from '../platform/sentences/sentences.js';
import { bagsOf } from '../drying/bulk-bags.js';
import type { SourceLink } from '../hopper/hopper-links.js';
import { contentsOf, descentsOf, findPallet } from './pallet-list.js';
import { standingOfPallet, type PalletStanding } from './pallet-standing.js';
import {
  computedGrossGrams,
  declaredNetGrams,
  type ContentRow,
  type DescentRow,
  type PalletRow,
} from './pallet-rows.js';

/** A bag whose sugar may be on a pallet, with its short number. */
export interface SourceBag extends SourceLink {
  readonly bagNumber: string;
}

/** A pallet as its single view shows it. */
export interface PalletView extends PalletRow {
  /** Count times nominal quantity. */
  readonly netGrams: number;
  /** Computed, not weighed. */
  readonly grossGrams: number;
  /** Code of the store place; null elsewhere. */
  readonly placeCode: string | null;
  readonly contents: readonly ContentRow[];
  readonly descents: readonly DescentRow[];
  readonly standing: Omit<PalletStanding, 'bags' | 'reasons'> & {
    readonly reasons: readonly (PalletStanding['reasons'][number] & { readonly sentence: string })[];
  };
  readonly bags: readonly SourceBag[];
}

/** Everything that is asked of one pallet. Takes over ten milliseconds: read it from a snapshot. */
export async function palletView(from: ReadFrom, siteId: string, ssccOrId: string): Promise<PalletView> {
  const pallet = await findPallet(from, siteId, ssccOrId);
  const { state, reasons, bags } = await standingOfPallet(from, pallet.id);
  return {
    ...pallet,
    netGrams: declaredNetGrams(pallet, pallet.packCount),
    grossGrams: computedGrossGrams(pallet),
    placeCode: ['in-store', 'returned'].includes(pallet.status) ? await placeCodeOf(from, pallet.placeId) : null,
    contents: await contentsOf(from, [pallet.id]),
    descents: await descentsOf(from, pallet.id),
    standing: {
      state,
      reasons: reasons.map((reason) => ({ ...reason, sentence: say(reason.code, reason.facts) })),
    },
    bags: await named(from, bags),
  };
}

async function named(from: ReadFrom, links: readonly SourceLink[]): Promise<readonly SourceBag[]> {
  const bags = await bagsOf(
    from,
    links.map((link) => link.bagId),
  );
  const numbers = new Map(bags.map((bag) => [bag.id, bag.number]));
  return links.map((link) => ({ ...link, bagNumber: numbers.get(link.bagId) ?? '' }));
}

async function placeCodeOf(from: ReadFrom, placeId: string | null): Promise<string | null> {
  if (placeId === null) return null;
  try {
    return (await placeOf(from, placeId)).code;
  } catch (error) {
    if (error instanceof NotFound) return null;
    throw error;
  }
}
