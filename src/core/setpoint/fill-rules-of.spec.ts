import { describe, expect, it } from '@jest/globals';
import { ruleSetOf, ruleSets } from '../average-quantity/rule-sets.js';
import { fillRulesOf } from './fill-rules-of.js';
import { lowestMean } from './lowest-mean.js';

describe('the rules of a market as figures of a setpoint', () => {
  it('are a mean, a share beyond T1, and none beyond T2', () => {
    expect(fillRulesOf(ruleSetOf('eu-76-211'), 1_000_000)).toEqual({
      nominalMilligrams: 1_000_000,
      t1Milligrams: 985_000,
      t2Milligrams: 970_000,
      shareBeyondT1: 0.025,
      shareBeyondT2: 0.0001,
    });
  });

  // FPackV section 9(3): at most 2 % beyond T1 at the time of production.
  it('ask for more in Germany, where fewer may be beyond T1', () => {
    const [german, european] = (['de-fpackv', 'eu-76-211'] as const).map((id) =>
      fillRulesOf(ruleSetOf(id), 1_000_000)!,
    );
    expect(german!.shareBeyondT1).toBe(0.02);
    expect(lowestMean(german!, 8_000).milligrams).toBeGreaterThan(lowestMean(european!, 8_000).milligrams);
  });

  it('are none where a rule set does not count beyond T1 and T2', () => {
    expect(fillRulesOf(ruleSetOf('us-handbook-133'), 1_000_000)).toBeNull();
    const advised = ruleSets.filter((set) => fillRulesOf(set, 1_000_000) !== null).map(({ id }) => id);
    expect(advised).toEqual(expect.arrayContaining(['eu-76-211', 'uk-2006-659', 'de-fpackv']));
  });
});
