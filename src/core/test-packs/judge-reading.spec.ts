import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { judgeReading } from './judge-reading.js';

const pack = { knownMilligrams: 2_000_000, allowedMilligrams: 2000 };

describe('a reading of a test pack', () => {
  it('passes exactly at what it may be off, on either side, and fails beyond it', () => {
    expect(judgeReading(pack, 2_002_000)).toEqual({ offMilligrams: 2000, passed: true, mistake: null });
    expect(judgeReading(pack, 1_998_000)).toEqual({ offMilligrams: -2000, passed: true, mistake: null });
    expect(judgeReading(pack, 2_002_001)).toEqual({ offMilligrams: 2001, passed: false, mistake: null });
    expect(judgeReading(pack, 2_002_400)).toEqual({ offMilligrams: 2400, passed: false, mistake: null });
  });

  it.each([
    [2000, 'thousandth'],
    [1429, 'thousandth'],
    [2857, 'thousandth'],
    [2_000_000_000, 'thousandfold'],
    [-1, 'below-zero'],
    [6_000_001, 'absurd'],
    [20_000_000, 'absurd'],
  ])('of %p mg for 2 kg cannot be meant: %s', (measured, mistake) => {
    expect(judgeReading(pack, measured)).toMatchObject({ passed: false, mistake });
  });

  it.each([0, 1428, 2858, 1_000_000, 6_000_000])('of %p mg for 2 kg is a failed one', (measured) => {
    expect(judgeReading(pack, measured)).toMatchObject({ passed: false, mistake: null });
  });

  it('that passes is never a mistake, and whether it passes goes by its distance alone', () => {
    const sizes = fc.record({
      knownMilligrams: fc.integer({ min: 1, max: 50_000_000 }),
      allowedMilligrams: fc.integer({ min: 0, max: 1_000_000 }),
    });
    fc.assert(
      fc.property(sizes, fc.integer({ min: -2_000_000, max: 2_000_000 }), (of, off) => {
        const judged = judgeReading(of, of.knownMilligrams + off);
        expect(judged.offMilligrams).toBe(off);
        expect(judged.passed).toBe(Math.abs(off) <= of.allowedMilligrams);
        if (judged.passed) expect(judged.mistake).toBeNull();
      }),
    );
  });
});
