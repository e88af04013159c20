import { describe, expect, it } from '@jest/globals';
import { shortLimits, shortStateOf } from './short-state.js';

describe('how short a pack is', () => {
  const limits = shortLimits(1_000_000, 'directive');

  // UK SI 2006/659 Schedule 2 paragraph 3.1: defective is what has less than the limit.
  it.each([
    [985_000, null],
    [984_999, 'beyondT1'],
    [970_000, 'beyondT1'],
    [969_999, 'beyondT2'],
    [1_010_000, null],
    [0, 'beyondT2'],
  ])('of %d mg in a pack of 1 kg is %s', (netMilligrams, state) => {
    expect(shortStateOf(netMilligrams, limits)).toBe(state);
  });

  it('has one limit in the United States', () => {
    expect(shortLimits(454_000, 'handbook-133')).toEqual([{ state: 'beyondMav', belowMilligrams: 434_100 }]);
    expect(shortStateOf(434_100, shortLimits(454_000, 'handbook-133'))).toBeNull();
    expect(shortStateOf(434_099, shortLimits(454_000, 'handbook-133'))).toBe('beyondMav');
  });
});
