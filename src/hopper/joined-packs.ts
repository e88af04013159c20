import { everySpan, spanOf, type CountedPacks, type PackSpan } from './counted-packs.js';
import { packMass } from './exit-facts.js';
import type { HopperPeriodFacts } from './hopper-periods.js';

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
export function joinedPacks(facts: HopperPeriodFacts): readonly PackSpan[] {
  const known = joinedByFacts.get(facts) ?? join(facts);
  joinedByFacts.set(facts, known);
  return known;
}

/** Facts that were read once are asked about many times. */
const joinedByFacts = new WeakMap<HopperPeriodFacts, readonly PackSpan[]>();

function join(facts: HopperPeriodFacts): readonly PackSpan[] {
  const runs = facts.counted.filter(({ size }) => size > 0).map((packs) => ({ packs, ...spanOfRun(packs) }));
  const between = Float64Array.from(
    [
      ...facts.additions.flatMap(({ earliestAt, likelyAt }) => [earliestAt, likelyAt]),
      ...facts.levels.flatMap(({ earliestAt, likelyAt, latestAt }) => [earliestAt, likelyAt, latestAt]),
      ...facts.removals.flatMap(({ likelyAt, latestAt }) => [likelyAt, latestAt]),
    ],
    (at) => Date.parse(at),
  ).sort();
  const joined = runs.flatMap((run) => {
    const others = instantsOfOthers(runs, run);
    return joinedOfRun(run.packs, others.length === 0 ? between : Float64Array.from([...between, ...others]).sort());
  });
  return mayReachCapacity(facts, joined) ? everySpan(facts.counted) : joined;
}

interface RunPacks {
  readonly packs: CountedPacks;
  readonly earliestAt: number;
  readonly latestAt: number;
}

/** When packs of other runs left while a run drew from the hopper too. */
function instantsOfOthers(runs: readonly RunPacks[], run: RunPacks): readonly number[] {
  const isBeside = (earliestAt: number, latestAt: number): boolean =>
    latestAt >= run.earliestAt && earliestAt <= run.latestAt;
  const instants: number[] = [];
  for (const other of runs) {
    if (other === run || !isBeside(other.earliestAt, other.latestAt)) continue;
    const { size, earliestAt, likelyAt, latestAt } = other.packs;
    for (let place = 0; place < size; place += 1) {
      if (!isBeside(earliestAt[place] ?? 0, latestAt[place] ?? 0)) continue;
      instants.push(likelyAt[place] ?? 0, latestAt[place] ?? 0);
    }
  }
  return instants;
}

function spanOfRun({ size, earliestAt, latestAt }: CountedPacks): Pick<RunPacks, 'earliestAt' | 'latestAt'> {
  let [earliest, latest] = [Infinity, -Infinity];
  for (let place = 0; place < size; place += 1) {
    earliest = Math.min(earliest, earliestAt[place] ?? 0);
    latest = Math.max(latest, latestAt[place] ?? 0);
  }
  return { earliestAt: earliest, latestAt: latest };
}

function joinedOfRun(packs: CountedPacks, between: Float64Array): readonly PackSpan[] {
  const joined: PackSpan[] = [];
  let start = 0;
  for (let next = 1; next <= packs.size; next += 1) {
    const goesOn =
      next < packs.size &&
      mayFollow(packs, next) &&
      !hasIn(between, packs.earliestAt[start] ?? 0, packs.latestAt[next] ?? 0);
    if (goesOn) continue;
    joined.push(spanOf(packs, start, next - 1));
    start = next;
  }
  return joined;
}

/** Whether the exit at a place goes on where the one before it ended. */
function mayFollow(packs: CountedPacks, place: number): boolean {
  return (
    packs.areWhole[place - 1] === 1 &&
    packs.areWhole[place] === 1 &&
    packs.toCounts[place - 1] === packs.fromCounts[place] &&
    isRising(packs.earliestAt, place) &&
    isRising(packs.likelyAt, place) &&
    isRising(packs.latestAt, place)
  );
}

function isRising(column: Float64Array, place: number): boolean {
  return (column[place - 1] ?? 0) <= (column[place] ?? 0);
}

/** Whether a list in order has an instant from one place to another, both included. */
function hasIn(list: Float64Array, from: number, to: number): boolean {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((list[middle] ?? Infinity) < from) low = middle + 1;
    else high = middle;
  }
  return (list[low] ?? Infinity) <= to;
}

/** Whether the hopper may have been as full as it can be, additions taken at their earliest and heaviest. */
function mayReachCapacity(
  { hopper, additions, removals, runs }: HopperPeriodFacts,
  packs: readonly PackSpan[],
): boolean {
  const changes = [
    ...additions.map(({ earliestAt, mass }) => ({ at: Date.parse(earliestAt), grams: mass.upperGrams })),
    ...removals.map(({ latestAt, mass }) => ({ at: Date.parse(latestAt), grams: -mass.lowerGrams })),
    ...packs.map(({ runId, fromCount, toCount, isWhole, latestAt }) => {
      const run = runs.get(runId);
      const grams = run === undefined || !isWhole ? 0 : packMass(run.meanNet, fromCount, toCount).lowerGrams;
      return { at: latestAt, grams: -grams };
    }),
  ].sort((one, other) => one.at - other.at || other.grams - one.grams);
  let levelGrams = 0;
  for (const { grams } of changes) {
    levelGrams += grams;
    if (levelGrams > hopper.capacityGrams) return true;
  }
  return false;
}
