import { setImmediate } from 'node:timers';
import { describe, expect, it } from '@jest/globals';
import { sortInParts } from './sort-in-parts.js';

describe('numbers sorted in parts', () => {
  const shuffled = (count: number): Float64Array =>
    Float64Array.from({ length: count }, (_, place) => (place * 7919 + 13) % 1_000_003);

  it.each([0, 1, 2, 65_536, 65_537, 131_072, 200_000, 1_000_000])('are in order: %d of them', async (count) => {
    const keys = shuffled(count);
    const truth = keys.slice().sort();
    expect(Buffer.from((await sortInParts(keys)).buffer).equals(Buffer.from(truth.buffer))).toBe(true);
  });

  it('leave others their turn', async () => {
    let turns = 0;
    let isSorting = true;
    const count = (): void => {
      turns += 1;
      if (isSorting) setImmediate(count);
    };
    count();
    await sortInParts(shuffled(1_000_000));
    isSorting = false;
    expect(turns).toBeGreaterThan(3);
  });
});
