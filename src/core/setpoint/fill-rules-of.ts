import type { RuleSet } from '../average-quantity/rule-set.js';
import { shortLimits } from '../average-quantity/short-state.js';
import type { FillRules } from './lowest-mean.js';

/** What a law calls *none beyond T2*, taken as a share: 1 in 10 000, by packers' custom in the UK (from memory). */
export const noneAsShare = 0.0001;

/**
 * What a rule set asks of all packs of a run, as figures that a setpoint can be reckoned from.
 *
 * @param nominalMilligrams whole milligrams, within the rule set's scope
 * @returns null where the rule set does not ask for a mean, a share beyond T1 and none beyond T2, or its table could not
 * be read: then no setpoint can be advised by it
 * @throws RangeError when the nominal quantity is outside of the table
 * @example fillRulesOf(ruleSetOf('de-fpackv'), 1_000_000)?.shareBeyondT1 // 0.02
 */
export function fillRulesOf({ shortBy, runRules }: RuleSet, nominalMilligrams: number): FillRules | null {
  if (shortBy.table === 'not-obtained') return null;
  const limits = shortLimits(nominalMilligrams, shortBy.table);
  const limitOf = (state: 'beyondT1' | 'beyondT2') => limits.find((limit) => limit.state === state)?.belowMilligrams;
  const [t1Milligrams, t2Milligrams] = [limitOf('beyondT1'), limitOf('beyondT2')];
  const share = runRules.find((rule) => rule.kind === 'share' && rule.of === 'beyondT1');
  const none = runRules.some((rule) => rule.kind === 'count' && rule.of === 'beyondT2' && rule.atMost === 0);
  if (t1Milligrams === undefined || t2Milligrams === undefined || share?.kind !== 'share' || !none) return null;
  if (!runRules.some(({ kind }) => kind === 'mean')) return null;
  const shareBeyondT1 = share.atMostPermille / 1000;
  return { nominalMilligrams, t1Milligrams, t2Milligrams, shareBeyondT1, shareBeyondT2: noneAsShare };
}
