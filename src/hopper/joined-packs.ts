import type { Instant } from '../platform/clock.js';
import { groupBy } from '../platform/group-by.js';
import { packMass, type PackExit } from './exit-facts.js';
import type { HopperPeriodFacts } from './hopper-periods.js';
import type { TimeWindow } from './record-times.js';

/**
 * The packs of a period with the counts left out that change no answer: packs that left one after the other, with
 * nothing poured, seen or taken otherwise between them, are one exit. So a question costs what its tips cost, not what
 * its minutes do.
 *
 * Exits are joined only where every order that is made of them (for bounds, and the likely one) has them side by side.
 * Their limits are those of all the packs together, rounded once instead of once a count: a few grams narrower at most.
 * Where the capacity may cut, nothing is joined: what is under way at an instant counts there. A target that begins or
 * ends within a joined exit cuts it like any other; what goes before what within it makes no difference.
 */
export function joinedPacks(facts: HopperPeriodFacts): readonly PackExit[] {
  const known = joinedByFacts.get(facts) ?? join(facts);
  joinedByFacts.set(facts, known);
  return known;
}

/** Facts that were read once are asked about many times. */
const joinedByFacts = new WeakMap<HopperPeriodFacts, readonly PackExit[]>();

function join(facts: HopperPeriodFacts): readonly PackExit[] {
  const runs = [...groupBy(facts.packs, ({ runId }) => runId).values()].map((packs) => ({ packs, ...spanOf(packs) }));
  const between: Instant[] = [
    ...facts.additions.flatMap(({ earliestAt, likelyAt }) => [earliestAt, likelyAt]),
    ...facts.levels.flatMap(({ earliestAt, likelyAt, latestAt }) => [earliestAt, likelyAt, latestAt]),
    ...facts.removals.flatMap(({ likelyAt, latestAt }) => [likelyAt, latestAt]),
  ];
  between.sort();
  const joined = runs.flatMap((run) => {
    const others = instantsOfOthers(runs, run);
    return joinedOfRun(run.packs, others.length === 0 ? between : [...between, ...others].sort());
  });
  return mayReachCapacity(facts, joined) ? facts.packs : joined;
}

interface RunPacks extends Pick<TimeWindow, 'earliestAt' | 'latestAt'> {
  readonly packs: readonly PackExit[];
}

/** When packs of other runs left while a run drew from the hopper too. */
function instantsOfOthers(runs: readonly RunPacks[], run: RunPacks): readonly Instant[] {
  const isBeside = (other: Pick<TimeWindow, 'earliestAt' | 'latestAt'>): boolean =>
    other.latestAt >= run.earliestAt && other.earliestAt <= run.latestAt;
  return runs
    .filter((other) => other !== run && isBeside(other))
    .flatMap(({ packs }) => packs.filter(isBeside).flatMap(({ likelyAt, latestAt }) => [likelyAt, latestAt]));
}

function spanOf(windows: readonly TimeWindow[]): Pick<TimeWindow, 'earliestAt' | 'latestAt'> {
  let { earliestAt, latestAt } = windows[0] ?? { earliestAt: '', latestAt: '' };
  for (const window of windows) {
    if (window.earliestAt < earliestAt) earliestAt = window.earliestAt;
    if (window.latestAt > latestAt) latestAt = window.latestAt;
  }
  return { earliestAt, latestAt };
}

function joinedOfRun(packs: readonly PackExit[], between: readonly Instant[]): readonly PackExit[] {
  const joined: PackExit[] = [];
  let start = 0;
  for (let next = 1; next <= packs.length; next += 1) {
    const [first, last, pack] = [packs[start], packs[next - 1], packs[next]];
    if (first === undefined || last === undefined) break;
    const goesOn = pack !== undefined && mayFollow(last, pack) && !hasIn(between, first.earliestAt, pack.latestAt);
    if (goesOn) continue;
    const { toCount, likelyToCount, likelyAt, latestAt } = last;
    joined.push(first === last ? first : { ...first, toCount, likelyToCount, likelyAt, latestAt });
    start = next;
  }
  return joined;
}

function mayFollow(before: PackExit, pack: PackExit): boolean {
  const isNext = before.isWhole && pack.isWhole && before.toCount === pack.fromCount;
  return (
    isNext &&
    before.earliestAt <= pack.earliestAt &&
    before.likelyAt <= pack.likelyAt &&
    before.latestAt <= pack.latestAt
  );
}

/** Whether a list in order has an instant from one place to another, both included. */
function hasIn(list: readonly Instant[], from: Instant, to: Instant): boolean {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    const place = list[middle];
    if (place !== undefined && place < from) low = middle + 1;
    else high = middle;
  }
  const first = list[low];
  return first !== undefined && first <= to;
}

/** Whether the hopper may have been as full as it can be, additions taken at their earliest and heaviest. */
function mayReachCapacity(
  { hopper, additions, removals, runs }: HopperPeriodFacts,
  packs: readonly PackExit[],
): boolean {
  const changes = [
    ...additions.map(({ earliestAt, mass }) => ({ at: earliestAt, grams: mass.upperGrams })),
    ...removals.map(({ latestAt, mass }) => ({ at: latestAt, grams: -mass.lowerGrams })),
    ...packs.map(({ runId, fromCount, toCount, isWhole, latestAt }) => {
      const run = runs.get(runId);
      const grams = run === undefined || !isWhole ? 0 : packMass(run.meanNet, fromCount, toCount).lowerGrams;
      return { at: latestAt, grams: -grams };
    }),
  ].sort((one, other) => (one.at < other.at ? -1 : one.at > other.at ? 1 : other.grams - one.grams));
  let levelGrams = 0;
  for (const { grams } of changes) {
    levelGrams += grams;
    if (levelGrams > hopper.capacityGrams) return true;
  }
  return false;
}
