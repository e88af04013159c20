import { expect } from '@jest/globals';
import { compareBounds, type Comparison } from './compare-bounds.js';
import { allFaults, type Fault } from './recorded-period.js';
import { truthCase } from './truth-case.js';

/** Every bag and every group of bags, in every target of these plants: least ≤ truth ≤ most, and no false alarm. */
export function expectBoundsHold(seeds: readonly number[], faults: readonly Fault[] = allFaults): void {
  const said = { sure: 0, ruledOut: 0, touched: 0 };
  for (const seed of seeds) {
    const { breaches, falseAlarms, links, ruledOutCount }: Comparison = compareBounds(truthCase(seed, new Set(faults)));
    expect({ seed, breaches, falseAlarms }).toEqual({ seed, breaches: [], falseAlarms: 0 });
    said.sure += links.filter(({ isSure }) => isSure).length;
    said.touched += links.filter(({ isTouched }) => isTouched).length;
    said.ruledOut += ruledOutCount;
  }
  // Bounds that say nothing are always true: these say something, and could not say much more.
  expect(said.sure).toBeGreaterThan(seeds.length);
  expect(said.ruledOut).toBeGreaterThan(100 * seeds.length);
  expect(said.touched).toBeGreaterThan(seeds.length);
}

export function seedsFrom(first: number, count: number, step = 1): readonly number[] {
  return Array.from({ length: count }, (_, place) => first + place * step);
}
