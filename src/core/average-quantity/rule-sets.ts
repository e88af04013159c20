import { canada, unitedStates } from './american-rule-sets.js';
import { directive, germany, unitedKingdom } from './european-rule-sets.js';
import { oimlR87 } from './oiml-rule-set.js';
import type { Market, RuleSet, RuleSetId } from './rule-set.js';

/** All rule sets that are kept, the directive first. */
export const ruleSets: readonly RuleSet[] = [directive, germany, unitedKingdom, oimlR87, unitedStates, canada];

/** One rule set by its id. */
export function ruleSetOf(id: RuleSetId): RuleSet {
  const found = ruleSets.find((each) => each.id === id);
  if (found === undefined) throw new RangeError(`No rule set ${id}`);
  return found;
}

/**
 * From here on a bag is a bulk bag: weighed by itself and sold by that weight, outside of every rule on averages.
 * Common practice, no source.
 */
const bulkBagFromMilligrams = 500_000_000;

/**
 * Why no rule set judges a pack: `below-scope` and `above-scope` leave it to the country's other law, `bulk-bag` is
 * weighed and sold by itself.
 */
export type OutsideScope =
  | { readonly kind: 'below-scope'; readonly fromMilligrams: number }
  | { readonly kind: 'above-scope'; readonly upToMilligrams: number }
  | { readonly kind: 'bulk-bag'; readonly fromMilligrams: number };

export interface InScope {
  /** Empty exactly where `outside` says why. */
  readonly ruleSets: readonly RuleSet[];
  readonly outside: OutsideScope | null;
}

/**
 * The rule sets by which packs of a nominal quantity are judged in a market; where there is none, why.
 *
 * The ℮ mark is for 5 g to 10 kg, the law of the United Kingdom for 5 g to 25 kg, OIML R 87 for up to 50 kg. No rule set
 * is stretched beyond its scope, and none is borrowed from another market.
 *
 * @param nominalMilligrams whole milligrams above 0
 * @throws RangeError for another number
 * @see Directive 76/211/EEC Article 1; GOV.UK, Packaged goods; Australian NTM Regulations 2009 reg. 4.36(4)
 * @example ruleSetsInScope(25_000_000, 'eu') // none: { kind: 'above-scope', upToMilligrams: 10000000 }
 */
export function ruleSetsInScope(nominalMilligrams: number, market: Market): InScope {
  if (!Number.isSafeInteger(nominalMilligrams) || nominalMilligrams <= 0) {
    throw new RangeError(`The nominal quantity must be whole milligrams above 0, not ${nominalMilligrams}`);
  }
  if (nominalMilligrams >= bulkBagFromMilligrams) {
    return { ruleSets: [], outside: { kind: 'bulk-bag', fromMilligrams: bulkBagFromMilligrams } };
  }
  const ofMarket = ruleSets.filter(({ markets }) => markets.includes(market));
  const inScope = ofMarket.filter(({ scope }) => isWithin(nominalMilligrams, scope));
  return { ruleSets: inScope, outside: inScope.length > 0 ? null : outsideOf(nominalMilligrams, ofMarket) };
}

function isWithin(nominalMilligrams: number, { fromMilligrams, upToMilligrams }: RuleSet['scope']): boolean {
  return nominalMilligrams >= fromMilligrams && (upToMilligrams === null || nominalMilligrams <= upToMilligrams);
}

function outsideOf(nominalMilligrams: number, ofMarket: readonly RuleSet[]): OutsideScope {
  const fromMilligrams = Math.min(...ofMarket.map(({ scope }) => scope.fromMilligrams));
  if (nominalMilligrams < fromMilligrams) return { kind: 'below-scope', fromMilligrams };
  const upToMilligrams = Math.max(...ofMarket.map(({ scope }) => scope.upToMilligrams ?? 0));
  return { kind: 'above-scope', upToMilligrams };
}
