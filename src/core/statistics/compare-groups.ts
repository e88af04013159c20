import { compareMeans, type MeansCompared } from './compare-means.js';

/** The values of a group as sums about one origin that all groups share, in one unit. */
export interface GroupSums {
  readonly count: number;
  readonly sum: number;
  readonly squareSum: number;
}

/** A group, and how it compares with the others together. */
export interface GroupCompared {
  readonly count: number;
  /** About the origin. */
  readonly mean: number;
  /** With n − 1; null of fewer than two values. */
  readonly standardDeviation: number | null;
  /** Null where the group or the others have fewer than two values. */
  readonly fromOthers: MeansCompared | null;
  /** Farther from the others than chance explains, and by what counts at least. */
  readonly isOff: boolean;
}

/**
 * Each group against the others together, so that one head that fills otherwise shows as that one head.
 *
 * With many groups one of them lies far off by chance now and then. So the risk is shared out: each comparison has the
 * risk over the number of groups (Bonferroni), and that chance calls any group off has the risk at most.
 *
 * One group that is far off draws the mean of the others after it, and then all of them would seem off to the other side.
 * So the farthest is set aside, and the rest are compared anew without it, until none is off; half of the groups at most,
 * since beyond that nobody can say who is right.
 *
 * @param groups in any order; none gives none
 * @param limits the risk for all comparisons together, above 0 and below 1; and the least difference that counts, 0 or
 * more: from thousands of values a hair is significant
 * @returns in the order of the groups; a group is compared with all others that are not off
 * @throws RangeError when the risk is out of its range
 * @see Dunn (1961), Journal of the American Statistical Association 56, 52, for sharing out the risk
 * @example compareGroups([{ count: 2, sum: 2, squareSum: 4 }, { count: 2, sum: 12, squareSum: 74 }],
 * { risk: 0.01, least: 0 })[1]?.mean // 6
 */
export function compareGroups(
  groups: readonly GroupSums[],
  limits: { readonly risk: number; readonly least: number },
): readonly GroupCompared[] {
  const risk = limits.risk / groups.length;
  const off = new Set<GroupSums>();
  for (;;) {
    const compared = groups.map((group) => comparedWith(group, groups, { off, risk }));
    const offNow = (place: number): boolean => isOff(compared[place], limits.least);
    const farthest = groups
      .map((group, place) => ({ group, place, size: Math.abs(compared[place]?.fromOthers?.difference ?? 0) }))
      .filter(({ group, place }) => !off.has(group) && offNow(place))
      .sort((one, other) => other.size - one.size)[0];
    if (farthest === undefined || off.size >= Math.floor(groups.length / 2)) {
      return compared.map((group, place) => ({ ...group, isOff: off.has(groups[place] ?? noValues) && offNow(place) }));
    }
    off.add(farthest.group);
  }
}

const noValues: GroupSums = { count: 0, sum: 0, squareSum: 0 };

function isOff(compared: Omit<GroupCompared, 'isOff'> | undefined, least: number): boolean {
  const found = compared?.fromOthers ?? null;
  return found !== null && found.isSignificant && Math.abs(found.difference) >= least;
}

function comparedWith(
  group: GroupSums,
  groups: readonly GroupSums[],
  { off, risk }: { readonly off: ReadonlySet<GroupSums>; readonly risk: number },
): Omit<GroupCompared, 'isOff'> {
  const rest = meanOf(groups.filter((other) => other !== group && !off.has(other)).reduce(add, noValues));
  const own = meanOf(group);
  const { count, sum } = group;
  if (own === null) return { count, mean: count === 0 ? 0 : sum / count, standardDeviation: null, fromOthers: null };
  return { ...own, fromOthers: rest === null ? null : compareMeans(own, rest, risk) };
}

function add(one: GroupSums, other: GroupSums): GroupSums {
  return {
    count: one.count + other.count,
    sum: one.sum + other.sum,
    squareSum: one.squareSum + other.squareSum,
  };
}

function meanOf({ count, sum, squareSum }: GroupSums) {
  if (count < 2) return null;
  const mean = sum / count;
  const variance = Math.max(0, squareSum - sum * mean) / (count - 1);
  return { count, mean, standardDeviation: Math.sqrt(variance) };
}
