import { describe, it } from '@jest/globals';
import { expectBoundsHold, seedsFrom } from './expect-bounds-hold.js';
import { allFaults } from './recorded-period.js';

describe('plants 100 to 199, of which the simulator knows where each gram went', () => {
  it('always have the truth between least and most, with every fault that records may have', () => {
    expectBoundsHold(seedsFrom(100, 100));
  }, 300_000);

  it.each([[[]], ...allFaults.map((fault) => [[fault]])])(
    'have it with no fault but %j too (every tenth)',
    (faults) => {
      expectBoundsHold(seedsFrom(100, 10, 10), faults);
    },
    120_000,
  );
});
