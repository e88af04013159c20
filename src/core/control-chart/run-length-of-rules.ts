import { solveLinear } from '../statistics/solve-linear.js';
import { normalShares } from '../statistics/standard-normal.js';
import type { ChartPattern, ChartRule } from './chart-rules.js';

type Beyond = ChartPattern & { readonly kind: 'beyond' };

/** What a rule on one side remembers: of the last figures, which were beyond; the oldest first, as 0 and 1. */
type Memory = string;

/** A part of the line of figures: between two distances, on one side or about the centre. */
interface Zone {
  readonly low: number;
  readonly high: number;
}

const mostStates = 1500;

/**
 * The average run length of chart rules together: how many figures until one of them shows.
 *
 * A Markov chain whose states are what the rules remember of the last figures (Champ and Woodall 1987, Technometrics 29,
 * 393); found by walking from the start, solved at once. More rules find shifts sooner and cry wolf more often: Western
 * Electric's four together do so every 92 figures, the first alone every 370.
 *
 * @param rules of the kind *so many of so many beyond*: all of Western Electric's, 1, 2, 5 and 6 of Nelson's
 * @param shift of the mean of the plotted figure, in its standard deviations
 * @returns 1 or more; relative error about 10⁻¹²
 * @throws RangeError where another kind of rule is among them, or they remember more than 1500 states
 * @example rulesRunLength(westernElectricRules, 0) // 91.75…
 */
export function rulesRunLength(rules: readonly ChartRule[], shift: number): number {
  const beyond = rules.map(({ name, pattern }) => {
    if (pattern.kind !== 'beyond') throw new RangeError(`No run length of ${name} here`);
    return pattern;
  });
  const zones = zonesOf(beyond);
  const chances = zones.map(({ low, high }) => shareBetween(low - shift, high - shift));
  const places = new Map<string, number>([[beyond.map(() => '|').join(), 0]]);
  const rows: Map<number, number>[] = [];
  for (const state of places.keys()) {
    const row = new Map<number, number>();
    for (const [at, zone] of zones.entries()) {
      const next = nextState(state, beyond, zone);
      if (next === null) continue;
      const place = places.get(next) ?? places.size;
      places.set(next, place);
      row.set(place, (row.get(place) ?? 0) + (chances[at] ?? 0));
    }
    rows.push(row);
    if (places.size > mostStates) throw new RangeError('These rules remember too much');
  }
  return solved(rows);
}

/** (1 − P)·L = 1; what is asked for is the length from the first state. */
function solved(rows: readonly Map<number, number>[]): number {
  const matrix = rows.map((row, at) => rows.map((_, column) => (at === column ? 1 : 0) - (row.get(column) ?? 0)));
  const lengths = solveLinear(
    matrix,
    rows.map(() => 1),
  );
  return lengths[0] ?? NaN;
}

/** What is remembered after one more figure; null where a rule shows. */
function nextState(state: string, rules: readonly Beyond[], zone: Zone): string | null {
  const next: string[] = [];
  for (const [at, memories] of state.split(',').entries()) {
    const rule = rules[at];
    if (rule === undefined) return null;
    const [above = '', below = ''] = memories.split('|');
    const both = [remember(above, rule, zone.low >= rule.sigmas), remember(below, rule, zone.high <= -rule.sigmas)];
    if (both.some((memory) => memory === null)) return null;
    next.push(both.join('|'));
  }
  return next.join();
}

/** Null where the rule shows. What can no longer count is forgotten, so that equal futures are one state. */
function remember(memory: Memory, { needed, of }: Beyond, isBeyond: boolean): Memory | null {
  const window = (memory + (isBeyond ? '1' : '0')).slice(-of);
  const found = [...window].filter((one) => one === '1').length;
  if (isBeyond && found >= needed) return null;
  if (needed === of && !isBeyond) return '';
  return window.slice(1 - of === 0 ? window.length : 1 - of).replace(/^0+/, '');
}

function zonesOf(rules: readonly Beyond[]): readonly Zone[] {
  const distances = [...new Set(rules.flatMap(({ sigmas }) => [-sigmas, sigmas]))].sort((one, other) => one - other);
  const edges = [-Infinity, ...distances.filter((edge, at) => edge !== distances[at - 1]), Infinity];
  return edges.slice(1).map((high, at) => ({ low: edges[at] ?? -Infinity, high }));
}

function shareBetween(low: number, high: number): number {
  // From the tail in which both are small, so that nothing is lost.
  return low > 0
    ? normalShares(low).above - normalShares(high).above
    : normalShares(high).below - normalShares(low).below;
}
