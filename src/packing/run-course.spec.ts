import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { readCourse, writeCourse, type CountPoint } from './run-course.js';

const occasions = [
  ...([
    'start',
    'minute',
    'tip',
    'pallet',
    'stop',
    'coder-change',
    'film-change',
    'handover',
    'close',
    'other',
  ] as const),
];
const count = fc.record({
  at: fc.date({
    min: new Date('2016-01-01T00:00:00.000Z'),
    max: new Date('2040-01-01T00:00:00.000Z'),
    noInvalidDate: true,
  }),
  packCount: fc.nat({ max: 2_000_000 }),
  occasion: fc.constantFrom(...occasions),
});

describe('the course of a run', () => {
  it('reads back as it was written, to the millisecond', () => {
    fc.assert(
      fc.property(fc.array(count, { minLength: 1, maxLength: 40 }), (counts) => {
        const points = counts.map(({ at, packCount, occasion }): CountPoint => {
          return { runId: 'run', packCount, countedAt: at.toISOString(), occasion };
        });
        expect(readCourse('run', writeCourse(points))).toEqual(points);
      }),
    );
  });

  it('is small: a shift counted every minute takes some kilobytes', () => {
    const points = Array.from({ length: 480 }, (_, minute): CountPoint => {
      const countedAt = new Date(Date.UTC(2026, 2, 12, 6, minute)).toISOString();
      return { runId: 'run', packCount: minute * 72, countedAt, occasion: 'minute' };
    });
    expect(writeCourse(points).length).toBeLessThan(6000);
  });

  it('is not written of no count', () => {
    expect(() => writeCourse([])).toThrow(RangeError);
  });
});
