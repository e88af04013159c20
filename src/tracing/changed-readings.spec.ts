import { describe, expect, it } from '@jest/globals';
import type { ComparedClock } from '../plant/coder-clocks.js';
import { stretchesOf } from './changed-readings.js';

const at = (hour: number): string => `2026-03-12T${String(hour).padStart(2, '0')}:00:00.000Z`;
const compared = (hour: number, offsetSeconds: number, uncertaintySeconds = 30): ComparedClock => ({
  ...{ id: `${hour}`, validFrom: at(hour), offsetSeconds, uncertaintySeconds },
});
const reading = (offsetSeconds: number, uncertaintySeconds = 30) => ({ offsetSeconds, uncertaintySeconds });

describe('where two lists of comparisons tell otherwise of a coder’s clock', () => {
  it('is nowhere where they are alike', () => {
    expect(stretchesOf([compared(6, 0), compared(8, 60)], [compared(6, 0), compared(8, 60)])).toEqual([]);
  });

  it('is from a corrected comparison to the next one', () => {
    expect(stretchesOf([compared(6, 0), compared(8, 0)], [compared(6, 300), compared(8, 0)])).toEqual([
      { fromAt: at(6), untilAt: at(8), before: reading(0), after: reading(300) },
    ]);
  });

  it('goes on where no other comparison ends it', () => {
    expect(stretchesOf([compared(6, 0)], [compared(6, 0), compared(8, 300)])).toEqual([
      { fromAt: at(8), untilAt: null, before: reading(0), after: reading(300) },
    ]);
  });

  it('begins with the earlier of two times where a comparison is moved, and is one stretch where it goes on alike', () => {
    expect(stretchesOf([compared(2, 0), compared(8, 300)], [compared(2, 0), compared(6, 300)])).toEqual([
      { fromAt: at(6), untilAt: at(8), before: reading(0), after: reading(300) },
    ]);
    expect(stretchesOf([compared(2, 0), compared(4, 0)], [compared(2, 60)])).toEqual([
      { fromAt: at(2), untilAt: null, before: reading(0), after: reading(60) },
    ]);
  });

  it('is read as a coder that nobody compared where the only comparison was none', () => {
    expect(stretchesOf([compared(6, 300)], [])).toEqual([
      { fromAt: at(6), untilAt: null, before: reading(300), after: reading(0, 120) },
    ]);
  });

  it('counts another uncertainty alone', () => {
    expect(stretchesOf([compared(6, 0, 30)], [compared(6, 0, 90)])).toEqual([
      { fromAt: at(6), untilAt: null, before: reading(0, 30), after: reading(0, 90) },
    ]);
  });
});
