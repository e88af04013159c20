/** Something measured or counted, and what is usual for it. */
export interface Observation {
  readonly value: number;
  /** The plant's own records of the same kind in the period, in any order and the same unit; the value itself may be among them. */
  readonly reference: readonly number[];
  /** `upper`: only more than usual is remarkable (stops, corrections); `both`: less is as remarkable as more. */
  readonly tail: 'upper' | 'both';
  /** What must not be exceeded or fallen short of, both allowed themselves; null: nobody set a limit. */
  readonly least?: number | null;
  readonly most?: number | null;
}

/** How unusual it is, with the numbers it rests on. */
export interface Unusualness {
  readonly word: 'outside-limits' | 'unusual' | 'usual' | 'too-few';
  /** How many of the reference are as far from the median or farther (in the tail that counts). */
  readonly asFarCount: number;
  readonly referenceCount: number;
  /** (asFarCount + 1) / (referenceCount + 1): from above 0 to 1; the smaller, the more unusual. */
  readonly tailShare: number;
  /** Null without a reference. */
  readonly median: number | null;
  /** (value − median) / (1.4826 · MAD); null where more than half of the reference is equal, or there is none. */
  readonly robustZ: number | null;
}

/** Fewer records than this make no habit. Our own choice, as for the usual range of laboratory results. */
export const fewestRecords = 12;

/** Up to this share of the period's records as far out, a value is called unusual. Our own choice. */
export const unusualShare = 0.05;

/** The MAD of a normal distribution is its standard deviation over this (1 / 0.6745; Iglewicz and Hoaglin 1993, from memory). */
const madToSigma = 1.4826;

/**
 * How unusual a value is among the plant's own records of a period.
 *
 * The measure is the share of records at least as far from the median, the value itself counted with them so that it is
 * never 0 (the add-one rule for empirical p-values; Davison and Hinkley 1997, chapter 4, from memory). It needs no
 * distribution, and makes counts and measured values comparable. The robust z stands beside it: it tells values apart
 * that are all beyond everything recorded. A value outside its limits is outside them however usual that is.
 *
 * @param observation finite numbers; `value` exactly at a limit is inside
 * @returns with fewer than 12 records `too-few` (unless outside the limits): nothing is said of how usual it is
 * @throws RangeError where a number is not finite
 * @example unusualness({ value: 9, reference: [1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 5, 5], tail: 'upper' }).tailShare // 1 / 13
 */
export function unusualness({ value, reference, tail, least = null, most = null }: Observation): Unusualness {
  if (![value, ...reference].every(Number.isFinite)) throw new RangeError('How unusual it is needs finite numbers');
  const median = medianOf(reference);
  const distance = (of: number): number => (tail === 'upper' ? of : Math.abs(of - (median ?? of)));
  const asFarCount = reference.filter((one) => distance(one) >= distance(value)).length;
  const referenceCount = reference.length;
  const tailShare = (asFarCount + 1) / (referenceCount + 1);
  const isOutside = (least !== null && value < least) || (most !== null && value > most);
  const numbers = { asFarCount, referenceCount, tailShare, median, robustZ: robustZOf(value, reference, median) };
  if (isOutside) return { word: 'outside-limits', ...numbers };
  if (referenceCount < fewestRecords) return { word: 'too-few', ...numbers };
  return { word: tailShare <= unusualShare ? 'unusual' : 'usual', ...numbers };
}

/**
 * Findings in the order in which they deserve a look: outside their limits, then unusual, then those with too few
 * records to say, then usual ones; within each the smaller tail share first, then the greater robust z, then as given.
 *
 * @example rankByUnusual([{ word: 'usual', tailShare: 0.4, robustZ: 1 }, { word: 'unusual', tailShare: 0.01, robustZ: 4 }])[0]?.word // 'unusual'
 */
export function rankByUnusual<Found extends Pick<Unusualness, 'word' | 'tailShare' | 'robustZ'>>(
  findings: readonly Found[],
): readonly Found[] {
  return findings.toSorted(
    (one, other) =>
      order.indexOf(one.word) - order.indexOf(other.word) ||
      one.tailShare - other.tailShare ||
      Math.abs(other.robustZ ?? 0) - Math.abs(one.robustZ ?? 0),
  );
}

const order: readonly Unusualness['word'][] = ['outside-limits', 'unusual', 'too-few', 'usual'];

/**
 * How many events fell into each of the equal stretches that spans of time are cut into, one after the other; what is
 * left at a span's end and shorter than a stretch is left out.
 *
 * @param events instants in milliseconds, in any order
 * @param spans from (inclusive) and until (exclusive), in milliseconds
 * @param lengthMilliseconds above 0
 * @throws RangeError where the length is not above 0
 * @example countsInStretches([1, 2, 12], [{ from: 0, until: 25 }], 10) // [2, 1]
 */
export function countsInStretches(
  events: readonly number[],
  spans: readonly { readonly from: number; readonly until: number }[],
  lengthMilliseconds: number,
): readonly number[] {
  if (!(lengthMilliseconds > 0)) throw new RangeError(`no length of a stretch: ${lengthMilliseconds}`);
  return spans.flatMap(({ from, until }) => {
    const counts = new Array<number>(Math.max(0, Math.floor((until - from) / lengthMilliseconds))).fill(0);
    for (const event of events) {
      const place = Math.floor((event - from) / lengthMilliseconds);
      if (event >= from && counts[place] !== undefined) counts[place] += 1;
    }
    return counts;
  });
}

function robustZOf(value: number, reference: readonly number[], median: number | null): number | null {
  if (median === null) return null;
  const mad = medianOf(reference.map((one) => Math.abs(one - median))) ?? 0;
  return mad === 0 ? null : (value - median) / (madToSigma * mad);
}

function medianOf(values: readonly number[]): number | null {
  const sorted = values.toSorted((one, other) => one - other);
  const [lower, upper] = [sorted[Math.ceil(sorted.length / 2) - 1], sorted[Math.floor(sorted.length / 2)]];
  return lower === undefined || upper === undefined ? null : (lower + upper) / 2;
}
