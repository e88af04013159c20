import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { readHandSample } from './read-hand-sample.js';

/** T1 and T2 of 2 kg by Directive 76/211/EEC: 1.5 % are 30 g. */
const limits = { nominalMilligrams: 2_000_000, t1Milligrams: 1_970_000, t2Milligrams: 1_940_000 };
const findingOf = (...nets: number[]) => readHandSample(nets, limits).finding;

describe('a hand sample, as it is read at the line', () => {
  it('has its mean, range, standard deviation and lightest pack', () => {
    // 2001.0, 2003.0, 1999.0, 2001.0 g: mean 2001 g, s = √(8/3) g.
    expect(readHandSample([20_010, 20_030, 19_990, 20_010], limits)).toEqual({
      packCount: 4,
      meanMilligrams: 2_001_000,
      smallestMilligrams: 1_999_000,
      rangeMilligrams: 4_000,
      standardDeviationMilligrams: 1_633,
      beyondT1Count: 0,
      beyondT2Count: 0,
      finding: 'inOrder',
    });
  });

  it('is in order exactly at each limit, and not a tenth of a gram below it', () => {
    expect(findingOf(20_000, 20_000)).toBe('inOrder');
    expect(findingOf(19_999, 20_000)).toBe('meanPerhapsBelow');
    expect(findingOf(19_999, 19_999)).toBe('meanBelow');
    expect(findingOf(19_700, 20_400)).toBe('inOrder');
    expect(findingOf(19_699, 20_400)).toBe('oneBeyondT1');
    expect(findingOf(19_699, 20_400, 19_699)).toBe('severalBeyondT1');
    expect(findingOf(19_400, 20_700)).toBe('oneBeyondT1');
    expect(findingOf(19_399, 20_700)).toBe('beyondT2');
  });

  it('tells a mean that is surely low from one that a few packs cannot settle', () => {
    // t(0.975, 4) = 2.776 of any printed table: mean 1998 g, s = √2.5 g, half width 1.963 g.
    expect(findingOf(19_960, 19_970, 19_980, 19_990, 20_000)).toBe('meanBelow');
    // The same spread about 1998.1 g: 1998.1 + 1.963 is above 2000 g.
    expect(findingOf(19_961, 19_971, 19_981, 19_991, 20_001)).toBe('meanPerhapsBelow');
  });

  it('knows no T1 and T2 where no table has them', () => {
    const open = { nominalMilligrams: 2_000_000, t1Milligrams: null, t2Milligrams: null };
    expect(readHandSample([10_000, 30_000], open)).toMatchObject({ beyondT1Count: 0, finding: 'inOrder' });
  });

  it('does not depend on the order of packs', () => {
    const nets = fc.array(fc.integer({ min: 19_000, max: 21_000 }), { minLength: 2, maxLength: 20 });
    fc.assert(
      fc.property(nets, (packs) => {
        const reversed = readHandSample([...packs].reverse(), limits);
        expect(reversed).toEqual(readHandSample(packs, limits));
      }),
    );
  });

  it.each([[[20_000]], [[20_000, 0]], [[20_000, 20_000.5]]])('refuses %j', (nets) => {
    expect(() => readHandSample(nets, limits)).toThrow(RangeError);
  });
});
