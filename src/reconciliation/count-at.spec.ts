import { describe, expect, it } from '@jest/globals';
import { countBetween } from './count-at.js';

const at = (minute: number): string => `2026-03-12T05:${String(minute).padStart(2, '0')}:00.000Z`;
const reading = (minute: number, packCount: number) => ({ countedAt: at(minute), packCount });

describe('the count of a run at an instant', () => {
  it('is what the counter showed just then, without doubt', () => {
    expect(countBetween(reading(10, 500), reading(11, 560), at(10))).toEqual({ packCount: 500, doubtPackCount: 0 });
  });

  it('is the reading nearest in time, with all packs between the two in doubt', () => {
    expect(countBetween(reading(10, 500), reading(20, 860), at(14))).toEqual({ packCount: 500, doubtPackCount: 360 });
    expect(countBetween(reading(10, 500), reading(20, 860), at(15))).toEqual({ packCount: 500, doubtPackCount: 360 });
    expect(countBetween(reading(10, 500), reading(20, 860), at(16))).toEqual({ packCount: 860, doubtPackCount: 360 });
  });

  it('is nothing before the run began, and the last reading after it', () => {
    expect(countBetween(null, reading(10, 0), at(5))).toEqual({ packCount: 0, doubtPackCount: 0 });
    expect(countBetween(reading(10, 500), null, at(30))).toEqual({ packCount: 500, doubtPackCount: 0 });
  });
});
