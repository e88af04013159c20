import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { coversBag, type CoveredBag, type SampleCover } from './sample-cover.js';
import { SamplesNear } from './samples-near.js';

const at = (hour: number): string => new Date(Date.UTC(2026, 2, 1, hour)).toISOString();
const ids = fc.constantFrom('one', 'two', 'three');
const covers = fc.oneof(
  ids.map((bagId): SampleCover => ({ bagId, dryerId: null, fromAt: null, untilAt: null })),
  fc
    .record({ dryerId: ids, from: fc.integer({ min: 0, max: 60 }), hours: fc.integer({ min: 1, max: 26 }) })
    .map(({ dryerId, from, hours }): SampleCover => {
      return { bagId: null, dryerId, fromAt: at(from), untilAt: at(from + hours) };
    }),
);
const bags = fc
  .record({ id: ids, dryerId: fc.option(ids), filled: fc.option(fc.integer({ min: 0, max: 90 })) })
  .map(({ id, dryerId, filled }): CoveredBag => ({ id, dryerId, filledAt: filled === null ? null : at(filled) }));

describe('samples near a bag', () => {
  it('are those that stand for it, each once, of however many', () => {
    let foundCount = 0;
    fc.assert(
      fc.property(fc.array(covers, { maxLength: 30 }), fc.array(bags, { maxLength: 10 }), (all, asked) => {
        const samples = all.map((cover, place) => ({ place, cover }));
        const near = new SamplesNear(samples);
        for (const bag of asked) {
          const places = near.of(bag).map(({ place }) => place);
          foundCount += places.length;
          expect(places.toSorted((one, other) => one - other)).toEqual(
            samples.filter(({ cover }) => coversBag(cover, bag)).map(({ place }) => place),
          );
        }
      }),
      { numRuns: 500, seed: 20_261_130 },
    );
    expect(foundCount).toBeGreaterThan(1_000);
  });
});
