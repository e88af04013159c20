import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { lossOnDryingPercent } from './loss-on-drying.js';

describe('the loss on drying', () => {
  it('is what the sample lost, in percent of what it weighed', () => {
    const percent = lossOnDryingPercent({
      dishMicrograms: 22_103_400,
      wetMicrograms: 52_110_200,
      dryMicrograms: 52_096_700,
    });
    expect(percent).toBeCloseTo(0.04499, 5);
  });

  it('moves by 0.0033 % for a milligram on the balance', () => {
    const weighings = { dishMicrograms: 22_103_400, wetMicrograms: 52_110_200, dryMicrograms: 52_096_700 };
    const off = lossOnDryingPercent({ ...weighings, dryMicrograms: weighings.dryMicrograms - 1_000 });
    expect(off - lossOnDryingPercent(weighings)).toBeCloseTo(0.0033, 4);
  });

  it('runs from nothing to everything', () => {
    expect(lossOnDryingPercent({ dishMicrograms: 1_000, wetMicrograms: 3_000, dryMicrograms: 3_000 })).toBe(0);
    expect(lossOnDryingPercent({ dishMicrograms: 1_000, wetMicrograms: 3_000, dryMicrograms: 1_000 })).toBe(100);
  });

  it.each([
    { dishMicrograms: 3_000, wetMicrograms: 3_000, dryMicrograms: 3_000 },
    { dishMicrograms: 1_000, wetMicrograms: 3_000, dryMicrograms: 3_001 },
    { dishMicrograms: 1_000, wetMicrograms: 3_000, dryMicrograms: 999 },
    { dishMicrograms: -1, wetMicrograms: 3_000, dryMicrograms: 2_000 },
    { dishMicrograms: 22.1034, wetMicrograms: 52.1102, dryMicrograms: 52.0967 },
  ])('does not come out of %j', (weighings) => {
    expect(() => lossOnDryingPercent(weighings)).toThrow(RangeError);
  });
});

describeWithChecks('the loss on drying against the worked example', () => {
  it('agrees to five decimals', () => {
    const { loss_on_drying: examples } = readChecks<{
      loss_on_drying: readonly { m_dish: number; m_wet: number; m_dry: number; LOD: number }[];
    }>('quality/lab_examples.json');
    expect(examples.length).toBeGreaterThan(0);
    const micrograms = (grams: number): number => Math.round(grams * 1_000_000);
    for (const { m_dish, m_wet, m_dry, LOD } of examples) {
      const percent = lossOnDryingPercent({
        dishMicrograms: micrograms(m_dish),
        wetMicrograms: micrograms(m_wet),
        dryMicrograms: micrograms(m_dry),
      });
      expect(percent).toBeCloseTo(LOD, 5);
    }
  });
});
