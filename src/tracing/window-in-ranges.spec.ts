import { describe, expect, it } from '@jest/globals';
import { certainRange, possibleRange, timesOfRange } from '../packing/ranges-in-time.js';
import { windowsOfPrintedTime } from './window-in-ranges.js';

const zone = 'Europe/Berlin';
const exact = { offsetSeconds: 0, uncertaintySeconds: 0 };
const counts = [0, 100, 200, 300].map((packCount, place) => ({
  packCount,
  countedAt: `2026-03-12T05:${String(place * 10).padStart(2, '0')}:00.000Z`,
}));
const range = { runId: 'run-1', fromCount: 0, toCount: 300 };

describe('a time printed on a pack', () => {
  const night = { fromAt: '2026-10-24T20:00:00.000Z', untilAt: '2026-10-25T05:00:00.000Z' };

  it('is one minute of the plant’s clock when the coder was right', () => {
    const span = { fromAt: '2026-03-12T05:00:00.000Z', untilAt: '2026-03-12T13:00:00.000Z' };
    expect(windowsOfPrintedTime('06:12', span, zone, exact)).toEqual([
      {
        printedAt: '2026-03-12T05:12:00.000Z',
        fromAt: '2026-03-12T05:12:00.000Z',
        untilAt: '2026-03-12T05:13:00.000Z',
      },
    ]);
  });

  it('was an hour earlier in truth when the coder was an hour ahead, and is widened by what is not known of it', () => {
    const span = { fromAt: '2026-03-12T03:00:00.000Z', untilAt: '2026-03-12T13:00:00.000Z' };
    const clock = { offsetSeconds: 3600, uncertaintySeconds: 60 };
    expect(windowsOfPrintedTime('06:12', span, zone, clock)).toEqual([
      {
        printedAt: '2026-03-12T05:12:00.000Z',
        fromAt: '2026-03-12T04:11:00.000Z',
        untilAt: '2026-03-12T04:14:00.000Z',
      },
    ]);
  });

  it('was printed twice in the night that repeats an hour', () => {
    expect(windowsOfPrintedTime('02:30', night, zone, exact).map((window) => window.fromAt)).toEqual([
      '2026-10-25T00:30:00.000Z',
      '2026-10-25T01:30:00.000Z',
    ]);
  });

  it('lies between the counts around it, and is sure only between counts inside it', () => {
    const minute = {
      printedAt: '2026-03-12T05:12:00.000Z',
      fromAt: '2026-03-12T05:12:00.000Z',
      untilAt: '2026-03-12T05:13:00.000Z',
    };
    expect(possibleRange(range, counts, minute)).toEqual({ runId: 'run-1', fromCount: 100, toCount: 200 });
    expect(certainRange(range, counts, minute)).toBeNull();
    const longer = { fromAt: '2026-03-12T05:05:00.000Z', untilAt: '2026-03-12T05:25:00.000Z' };
    expect(possibleRange(range, counts, longer)).toEqual({ runId: 'run-1', fromCount: 0, toCount: 300 });
    expect(certainRange(range, counts, longer)).toEqual({ runId: 'run-1', fromCount: 100, toCount: 200 });
  });

  it('never reaches beyond the packs that carry the code', () => {
    const lot = { runId: 'run-1', fromCount: 150, toCount: 180 };
    const minute = {
      printedAt: '2026-03-12T05:12:00.000Z',
      fromAt: '2026-03-12T05:12:00.000Z',
      untilAt: '2026-03-12T05:13:00.000Z',
    };
    expect(possibleRange(lot, counts, minute)).toEqual(lot);
    const later = { fromAt: '2026-03-12T05:25:00.000Z', untilAt: '2026-03-12T05:26:00.000Z' };
    expect(possibleRange(lot, counts, later)).toBeNull();
  });

  it('tells when packs were packed from the counts around them', () => {
    expect(timesOfRange({ runId: 'run-1', fromCount: 150, toCount: 200 }, counts)).toEqual({
      fromAt: '2026-03-12T05:10:00.000Z',
      untilAt: '2026-03-12T05:20:00.000Z',
    });
  });
});
