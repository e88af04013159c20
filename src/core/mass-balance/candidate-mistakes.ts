import { mean } from '../statistics/mean.js';
import { standardDeviation } from '../statistics/standard-deviation.js';
import { type CandidateMistake } from './suspects.js';

/** A bag or a pallet of the account, by its record and what it holds. */
export interface WeighedRecord {
  readonly recordId: string;
  readonly grams: number;
}

/**
 * Spread of a bag that nobody recorded where fewer than two bags show one: 5 % of the net. Our own choice, no source.
 */
const shareWithoutSpread = 0.05;

/**
 * The mistakes that are worth looking for in an account with these bags and pallets.
 *
 * One bag more than was recorded (as heavy as the bags are on average, with their spread), each bag entered twice, one
 * full pallet not counted (the heaviest of those counted is taken for full: a mean with part pallets would explain
 * nearly anything), and each pallet counted twice. Records of 0 g are passed over.
 *
 * @param bags the bags tipped, with their nets
 * @param pallets the pallets counted into the account, with the net of their packs
 * @returns none where there is neither bag nor pallet
 * @throws RangeError when grams are negative or not finite
 * @example candidateMistakes([{ recordId: 'tip-1', grams: 1_000_000 }], []).map(({ mistake }) => mistake)
 * // ['bag-not-recorded', 'bag-entered-twice']
 */
export function candidateMistakes(
  bags: readonly WeighedRecord[],
  pallets: readonly WeighedRecord[],
): readonly CandidateMistake[] {
  if ([...bags, ...pallets].some(({ grams }) => !(grams >= 0) || !Number.isFinite(grams))) {
    throw new RangeError('Bags and pallets need weights of 0 g or more');
  }
  return [
    ...oneBagMore(bags),
    ...eachTwice('bag-entered-twice', bags),
    ...oneFullPalletMore(pallets),
    ...eachTwice('pallet-counted-twice', pallets),
  ];
}

function oneBagMore(bags: readonly WeighedRecord[]): readonly CandidateMistake[] {
  const nets = bags.map(({ grams }) => grams).filter((grams) => grams > 0);
  if (nets.length === 0) return [];
  const grams = Math.round(mean(nets));
  const standardGrams = nets.length < 2 ? grams * shareWithoutSpread : standardDeviation(nets);
  return [{ mistake: 'bag-not-recorded', recordId: null, grams, standardGrams }];
}

function oneFullPalletMore(pallets: readonly WeighedRecord[]): readonly CandidateMistake[] {
  const grams = pallets.reduce((heaviest, pallet) => Math.max(heaviest, pallet.grams), 0);
  return grams === 0 ? [] : [{ mistake: 'pallet-not-counted', recordId: null, grams, standardGrams: 0 }];
}

function eachTwice(
  mistake: CandidateMistake['mistake'],
  records: readonly WeighedRecord[],
): readonly CandidateMistake[] {
  return records
    .filter(({ grams }) => grams > 0)
    .map(({ recordId, grams }) => ({ mistake, recordId, grams, standardGrams: 0 }));
}
