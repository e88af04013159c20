import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { crc32c } from './crc32c.js';
import { DamagedWeights, type DamageReason } from './damaged-weights.js';
import { decodeWeights } from './decode-weights.js';
import { encodeWeights } from './encode-weights.js';
import { joinWeights, noHead, pickWeights, sliceWeights, zeroOrNoHead, type WeightColumns } from './weight-columns.js';
import { someWeights, weightsOf } from './weights.examples.js';

const reasonOf = (bytes: Uint8Array): DamageReason | null => {
  try {
    decodeWeights(bytes);
    return null;
  } catch (error) {
    if (error instanceof DamagedWeights) return error.reason;
    throw error;
  }
};

/** Any weights at all, with counters that jump and clocks that go back. */
const anyWeights = fc
  .record({
    first: fc.integer({ min: 0, max: 2 ** 40 }),
    rows: fc.array(
      fc.record({
        gap: fc.oneof({ weight: 6, arbitrary: fc.constant(1) }, fc.integer({ min: 1, max: 2 ** 35 })),
        at: fc.oneof(fc.integer({ min: 0, max: 2 ** 43 }), fc.integer({ min: 1.7e11, max: 1.7e11 + 1000 })),
        net: fc.oneof(
          fc.integer({ min: -(2 ** 31), max: 2 ** 31 - 1 }),
          fc.integer({ min: 9900, max: 10_100 }).map((decigrams) => decigrams * 100),
        ),
        head: fc.oneof(fc.integer({ min: 0, max: 255 }), fc.integer({ min: 1, max: 3 })),
        untold: fc.constantFrom(noHead, noHead, zeroOrNoHead),
        isTold: fc.boolean(),
        rejected: fc.integer({ min: 0, max: 1 }),
      }),
      { minLength: 1, maxLength: 60 },
    ),
    hasHeads: fc.constantFrom('all', 'some', 'none'),
    hasRejects: fc.boolean(),
  })
  .map(({ first, rows, hasHeads, hasRejects }): WeightColumns => {
    let sequence = first;
    return {
      count: rows.length,
      sequences: Float64Array.from(rows, ({ gap }) => (sequence += gap)),
      atCentiseconds: Float64Array.from(rows, ({ at }) => at),
      netMilligrams: Int32Array.from(rows, ({ net }) => net),
      heads:
        hasHeads === 'none'
          ? null
          : Int16Array.from(rows, ({ head, untold, isTold }) => (hasHeads === 'all' || isTold ? head : untold)),
      isRejected: hasRejects ? Uint8Array.from(rows, ({ rejected }) => rejected) : null,
    };
  });

/** The same bytes, changed, with a checksum that fits them. */
function forged(bytes: Uint8Array): Uint8Array {
  const copy = bytes.slice();
  new DataView(copy.buffer).setUint32(copy.length - 4, crc32c(copy.subarray(0, copy.length - 4)));
  return copy;
}

describe('a block of weights', () => {
  it('reads back exactly, whatever the weights', () => {
    fc.assert(
      fc.property(anyWeights, (columns) => {
        expect(decodeWeights(encodeWeights(columns))).toEqual(columns);
      }),
      { numRuns: 300 },
    );
  });

  it.each([
    ['one weight', weightsOf([{ sequence: 0, at: 0, net: -(2 ** 31) }])],
    [
      'the ends of every range',
      weightsOf([
        { sequence: 0, at: 2 ** 43, net: 2 ** 31 - 1 },
        { sequence: 2 ** 53 - 1, at: 0, net: -(2 ** 31) },
      ]),
    ],
    ['heads by turns, one pack lost', someWeights({ count: 999, seed: 5, heads: 'by-turns' })],
    ['heads in no order', someWeights({ count: 999, seed: 6, heads: 'any' })],
    ['a regular clock', someWeights({ count: 999, seed: 7, jitterCentiseconds: 0 })],
    ['some packs pushed out', someWeights({ count: 999, seed: 8, rejectedShare: 0.01 })],
    ['as many as a block takes', someWeights({ count: 65_536, seed: 9 })],
  ])('reads back exactly: %s', (_, columns) => {
    expect(decodeWeights(encodeWeights(columns))).toEqual(columns);
  });

  // 0.1 g steps, s = 5 g; 10 ms steps, jitter 100 ms: log2(50 √(2πe)) + log2(10 √(2πe)) bits of entropy (Shannon 1948).
  it('takes little more than the entropy of its weights and times', () => {
    const entropyBits =
      Math.log2(50 * Math.sqrt(2 * Math.PI * Math.E)) + Math.log2(10 * Math.sqrt(2 * Math.PI * Math.E));
    const bytes = encodeWeights(someWeights({ count: 4096, seed: 1 })).length / 4096;
    expect(bytes).toBeLessThan(1.75);
    expect((bytes * 8) / entropyBits).toBeLessThan(1.05);
    expect((bytes * 8) / entropyBits).toBeGreaterThan(0.98);
    const regular = encodeWeights(someWeights({ count: 4096, seed: 2, jitterCentiseconds: 0 })).length / 4096;
    expect(regular).toBeLessThan(1.2);
    const byTurns = encodeWeights(someWeights({ count: 4096, seed: 3, heads: 'by-turns' })).length / 4096;
    expect(byTurns).toBeLessThan(1.75);
  });

  it('is not made longer by one pack that is far off, one stop and a counter that jumps', () => {
    const plain = someWeights({ count: 4096, seed: 4 });
    const odd = {
      ...plain,
      netMilligrams: plain.netMilligrams.slice(),
      atCentiseconds: plain.atCentiseconds.slice(),
      sequences: plain.sequences.slice(),
    };
    odd.netMilligrams[100] = 0;
    for (let place = 2000; place < 4096; place += 1) {
      odd.atCentiseconds[place] = (odd.atCentiseconds[place] ?? 0) + 360_000;
      odd.sequences[place] = (odd.sequences[place] ?? 0) + 17;
    }
    expect(encodeWeights(odd).length - encodeWeights(plain).length).toBeLessThan(40);
  });

  it('shows every single bit that is damaged', () => {
    const bytes = encodeWeights(someWeights({ count: 200, seed: 10, heads: 'any', rejectedShare: 0.05 }));
    for (let bit = 0; bit < bytes.length * 8; bit += 1) {
      const damaged = bytes.slice();
      damaged[bit >>> 3] = (damaged[bit >>> 3] ?? 0) ^ (1 << (bit & 7));
      // Of the bits of the version 2, changing one gives none that is known.
      expect(reasonOf(damaged)).toBe(bit < 8 ? 'unknown-version' : 'wrong-checksum');
    }
  });

  it('shows bytes that are cut off or added', () => {
    const bytes = encodeWeights(someWeights({ count: 20, seed: 11 }));
    for (let length = 0; length < bytes.length; length += 1) expect(reasonOf(bytes.subarray(0, length))).not.toBeNull();
    expect(reasonOf(bytes.subarray(0, 4))).toBe('too-short');
    expect(reasonOf(Uint8Array.of(...bytes, 0))).toBe('wrong-checksum');
    expect(reasonOf(forged(Uint8Array.of(...bytes.subarray(0, -4), 0, 0, 0, 0, 0)))).toBe('bytes-left-over');
    expect(reasonOf(forged(bytes.subarray(0, -8)))).toBe('runs-past-its-end');
  });

  it('of a later edition is refused by name', () => {
    const bytes = encodeWeights(someWeights({ count: 20, seed: 12 }));
    for (const version of [0, 3, 255]) {
      bytes[0] = version;
      expect(() => decodeWeights(forged(bytes))).toThrow(
        new RegExp(`unknown-version.*version ${version};.*knows version 1 to 2`),
      );
    }
  });

  it('that somebody made up with a right checksum is refused or read, and never more than 65 536 weights', () => {
    const base = encodeWeights(someWeights({ count: 40, seed: 13, heads: 'any', rejectedShare: 0.1 }));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(base.length - 5), fc.nat(255)), { minLength: 1, maxLength: 6 }),
        fc.uint8Array({ maxLength: 40 }),
        (changes, tail) => {
          const bytes = Uint8Array.of(...base.subarray(0, -4), ...tail, 0, 0, 0, 0);
          for (const [place, byte] of changes) if (place > 0) bytes[place] = byte;
          const whole = forged(bytes);
          if (reasonOf(whole) === null) {
            const columns = decodeWeights(whole);
            expect(columns.count).toBeLessThanOrEqual(65_536);
            expect(decodeWeights(encodeWeights(columns))).toEqual(columns);
          }
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('of more weights than it has room for is refused before memory is set aside', () => {
    // Version 2, no heads, no rejects, then a count of 2^49 in groups of seven bits.
    const bits = `0000001000${'11111111'.repeat(7)}00000000`;
    const bytes = Uint8Array.from({ length: Math.ceil(bits.length / 8) + 4 }, (_, place) =>
      Number.parseInt(bits.slice(place * 8, place * 8 + 8).padEnd(8, '0') || '0', 2),
    );
    expect(reasonOf(forged(bytes))).toBe('impossible-value');
  });

  it('is refused for sequences that do not ascend, times out of range, and columns of other lengths', () => {
    const columns = someWeights({ count: 3, seed: 14 });
    const refused: readonly WeightColumns[] = [
      { ...columns, sequences: Float64Array.of(1, 1, 2) },
      { ...columns, sequences: Float64Array.of(1, 1.5, 2) },
      { ...columns, sequences: Float64Array.of(-1, 1, 2) },
      { ...columns, sequences: Float64Array.of(1, 2, Number.NaN) },
      { ...columns, atCentiseconds: Float64Array.of(0, 1, -1) },
      { ...columns, atCentiseconds: Float64Array.of(0, 1, 2 ** 43 + 1) },
      { ...columns, atCentiseconds: Float64Array.of(0, 1, Number.NaN) },
      { ...columns, heads: Int16Array.of(1) },
      { ...columns, heads: Int16Array.of(1, 2, -3) },
      { ...columns, heads: Int16Array.of(1, 2, 256) },
      { ...columns, isRejected: Uint8Array.of(0, 1, 2) },
      sliceWeights(columns, 0, 0),
    ];
    for (const wrong of refused) expect(() => encodeWeights(wrong)).toThrow(RangeError);
  });
});

describe('heads in a block of weights', () => {
  const turns = someWeights({ count: 999, seed: 16, heads: 'by-turns' });

  it('are kept apart from none told, and 0 is a head', () => {
    const heads = Int16Array.of(0, noHead, 255, noHead, 0, zeroOrNoHead, 1);
    const columns = { ...someWeights({ count: 7, seed: 17 }), heads };
    expect(decodeWeights(encodeWeights(columns)).heads).toEqual(heads);
    expect(decodeWeights(encodeWeights({ ...columns, heads: heads.map(() => noHead) })).heads).toEqual(
      heads.map(() => noHead),
    );
  });

  it('that one weight in a hundred does not tell cost less than a byte in ten weights', () => {
    const heads = turns.heads?.map((head, place) => (place % 100 === 50 ? noHead : head)) ?? null;
    const untold = { ...turns, heads };
    expect(decodeWeights(encodeWeights(untold))).toEqual(untold);
    expect(encodeWeights(untold).length - encodeWeights(turns).length).toBeLessThan(99);
  });

  it('of a part that tells none join as none, not as head 0', () => {
    const [first, second] = [sliceWeights(turns, 0, 3), { ...sliceWeights(turns, 3, 5), heads: null }];
    expect(joinWeights([first, second]).heads).toEqual(Int16Array.of(1, 2, 3, noHead, noHead));
  });
});

/** Written by the writer of version 1 before version 2 was there. */
const version1 = {
  byTurns: '01823e3dc0880e8818d9705460119178f4c90269a194e14e00fd94e6c8',
  fromZero: '01827e3dc0880e8818d9705460119178f4c90269a6218618682c09d1',
  inNoOrder: '0181fe3dc0880e8818d9705460119178f4c90269a8050000ff070001d0bc7621',
  none: '0100fe3dc0880e8818d9705460119178f4c902604424f258',
};

describe('a block of version 1', () => {
  const read = (of: keyof typeof version1) => decodeWeights(Buffer.from(version1[of], 'hex'));

  it.each([
    ['byTurns', [1, 2, 3, 4, 1, 2, 3, 4]],
    ['fromZero', [zeroOrNoHead, 1, 2, zeroOrNoHead, 1, 2, zeroOrNoHead, 1, 2]],
    ['inNoOrder', [5, zeroOrNoHead, zeroOrNoHead, 255, 7, zeroOrNoHead, 1]],
    ['none', null],
  ] as const)('is read as it was written, its 0 as head 0 or none: %s', (of, heads) => {
    const columns = read(of);
    expect(columns.heads === null ? null : [...columns.heads]).toEqual(heads);
    expect([...columns.netMilligrams.slice(0, 3)]).toEqual([1_003_200, 1_003_300, 1_003_400]);
    expect([...columns.sequences.slice(0, 3)]).toEqual([48_120, 48_121, 48_122]);
    expect([...columns.atCentiseconds.slice(0, 3)]).toEqual([178_000_000_000, 178_000_000_070, 178_000_000_140]);
  });

  it('without heads differs from version 2 in the number of the version alone', () => {
    fc.assert(
      fc.property(anyWeights, (columns) => {
        const whole = { ...columns, heads: null };
        const bytes = encodeWeights(whole);
        bytes[0] = 1;
        expect(decodeWeights(forged(bytes))).toEqual(whole);
      }),
    );
  });

  it('joins with one of version 2, and what it does not tell stays untold when both are sealed as one', () => {
    const old = read('fromZero');
    const fresh = { ...weightsOf([{ sequence: 60_000, at: 1, net: 2 }]), heads: Int16Array.of(0) };
    const sealed = decodeWeights(encodeWeights(joinWeights([fresh, old])));
    expect([...(sealed.heads ?? [])]).toEqual([...(old.heads ?? []), 0]);
    const bare = { ...fresh, heads: null };
    expect(joinWeights([old, bare]).heads?.at(-1)).toBe(noHead);
  });
});

describe('parts of weights', () => {
  it('join to the same whole, however they were cut and in whatever order they come', () => {
    fc.assert(
      fc.property(anyWeights, fc.array(fc.nat(60), { maxLength: 5 }), fc.boolean(), (columns, cuts, isTurned) => {
        const places = [...new Set([0, columns.count, ...cuts.map((cut) => Math.min(cut, columns.count))])].sort(
          (one, other) => one - other,
        );
        const parts = places.slice(1).map((to, index) => sliceWeights(columns, places[index] ?? 0, to));
        expect(joinWeights(isTurned ? parts.reverse() : parts)).toEqual(columns);
      }),
    );
  });

  it('join also where they reach into each other, and are refused where both hold one sequence', () => {
    const columns = someWeights({ count: 10, seed: 15, heads: 'any', rejectedShare: 0.5 });
    const even = pickWeights(columns, Uint32Array.of(0, 2, 4, 6, 8));
    const odd = pickWeights(columns, Uint32Array.of(1, 3, 5, 7, 9));
    expect(joinWeights([odd, even])).toEqual(columns);
    expect(() => joinWeights([even, columns])).toThrow(RangeError);
  });
});
