import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { hoursOfWeights } from './hours-of-weights.js';
import { addToMinutes, addWrittenMinutes, noMinutes, writeMinutes, type MinuteSums } from './minute-sums.js';
import { emptyColumns, joinWeights, sliceWeights, type WeightColumns } from './weight-columns.js';

const nominal = 1_000_000;

function weightsOf(rows: readonly { second: number; net: number; isRejected: boolean }[]): WeightColumns {
  const columns = emptyColumns(rows.length, { hasHeads: false, hasRejects: true });
  rows.forEach(({ second, net, isRejected }, place) => {
    columns.sequences[place] = place + 1;
    columns.atCentiseconds[place] = second * 100;
    columns.netMilligrams[place] = net;
    if (columns.isRejected !== null) columns.isRejected[place] = isRejected ? 1 : 0;
  });
  return columns;
}

const sumOf = (columns: WeightColumns): MinuteSums => addToMinutes(noMinutes(), columns, nominal);

describe('the sums of the minutes of an hour', () => {
  it('count what was accepted in each minute, and not what was pushed out', () => {
    const sums = sumOf(
      weightsOf([
        { second: 0, net: 1_000_500, isRejected: false },
        { second: 59, net: 999_000, isRejected: false },
        { second: 59, net: 900_000, isRejected: true },
        { second: 3599, net: 1_002_000, isRejected: false },
      ]),
    );
    expect([...sums.packCounts].flatMap((packs, minute) => (packs === 0 ? [] : [[minute, packs]]))).toEqual([
      [0, 2],
      [59, 1],
    ]);
    expect([sums.errorSumsMilligrams[0], sums.errorSumsMilligrams[59]]).toEqual([-500, 2000]);
  });

  it('are the same however the weights are cut into parts, and come back from their bytes as they were', () => {
    const row = fc.record({
      second: fc.integer({ min: 0, max: 3599 }),
      net: fc.integer({ min: 0, max: 3_000_000 }),
      isRejected: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(row, { maxLength: 200 }), fc.nat(200), (rows, cut) => {
        const whole = weightsOf(rows);
        const parts = [sliceWeights(whole, 0, cut), sliceWeights(whole, Math.min(cut, whole.count), whole.count)];
        const added = noMinutes();
        for (const part of parts.reverse()) addWrittenMinutes(added, writeMinutes(sumOf(part)));
        expect(added).toEqual(sumOf(whole));
        expect(sumOf(joinWeights(parts))).toEqual(added);
      }),
    );
  });

  it('find the minute in any hour since 1970', () => {
    const at = Date.UTC(2026, 5, 1, 8, 17, 30) / 1000;
    const [hour] = hoursOfWeights(weightsOf([{ second: at, net: nominal, isRejected: false }]));
    expect(hour && sumOf(hour.columns).packCounts[17]).toBe(1);
  });

  it('refuse bytes that are cut off, or speak of a minute too many', () => {
    expect(() => addWrittenMinutes(noMinutes(), Uint8Array.of(0, 128))).toThrow(RangeError);
    expect(() => addWrittenMinutes(noMinutes(), Uint8Array.of(60, 1, 0))).toThrow(RangeError);
    expect(writeMinutes(noMinutes())).toHaveLength(0);
  });
});
