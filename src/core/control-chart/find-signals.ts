import type { ChartPattern, ChartRule } from './chart-rules.js';

/** A rule that a figure has set off, and what that rests on. */
export interface Signal<Name extends string = string> {
  readonly rule: Name;
  /** The figure with which it shows, by its place from 0. */
  readonly at: number;
  /** The places of the figures that it rests on, in the order of time; the last is `at`. */
  readonly restsOn: readonly number[];
}

/**
 * What chart rules find in figures, in the order of time; at one figure in the order of the rules.
 *
 * A pattern that goes on is a signal at each further figure. *So many of so many* shows with the figure that is itself
 * beyond, and as soon as enough are: two beyond 2σ in a row do not wait for a third.
 *
 * @param standardized figures in standard deviations above the centre line, in the order of time (`standardized`)
 * @param rules each looked for on its own
 * @throws RangeError when a figure is not a number
 * @example findSignals([0.5, 2.1, 0.3, 2.4], westernElectricRules) // [{ rule: 'western-electric-2', at: 3, restsOn: [1, 3] }]
 */
export function findSignals<Name extends string>(
  standardized: readonly number[],
  rules: readonly ChartRule<Name>[],
): readonly Signal<Name>[] {
  if (standardized.some(Number.isNaN)) throw new RangeError('Chart rules need numbers');
  return standardized.flatMap((_, at) =>
    rules.flatMap(({ name, pattern }) => {
      const restsOn = placesOf(pattern, standardized, at);
      return restsOn === null ? [] : [{ rule: name, at, restsOn }];
    }),
  );
}

/**
 * Signals where they began: one that goes on at the next figure is left out there.
 *
 * @param signals of one chart, as `findSignals` answers them
 * @returns in the same order
 * @example begunSignals(findSignals([4, 4, 0, 4], [westernElectricRules[0]])).map(({ at }) => at) // [0, 3]
 */
export function begunSignals<Name extends string>(signals: readonly Signal<Name>[]): readonly Signal<Name>[] {
  return signals.filter(({ rule, at }) => !signals.some((other) => other.rule === rule && other.at === at - 1));
}

function placesOf(pattern: ChartPattern, figures: readonly number[], at: number): readonly number[] | null {
  if (pattern.kind === 'beyond') return placesBeyond(pattern, figures, at);
  const first = at - pattern.of + 1;
  if (first < 0) return null;
  const places = Array.from({ length: pattern.of }, (_, place) => first + place);
  return isPattern(
    pattern,
    places.map((place) => figures[place] ?? NaN),
  )
    ? places
    : null;
}

function placesBeyond(
  { sigmas, needed, of }: ChartPattern & { readonly kind: 'beyond' },
  figures: readonly number[],
  at: number,
): readonly number[] | null {
  const side = Math.sign(figures[at] ?? 0);
  const window = Array.from({ length: Math.min(of, at + 1) }, (_, back) => at - back);
  const places = window.filter((place) => side * (figures[place] ?? NaN) > sigmas);
  // The latest that suffice; the newest must be one of them.
  return places[0] === at && places.length >= needed ? places.slice(0, needed).reverse() : null;
}

function isPattern(pattern: Exclude<ChartPattern, { kind: 'beyond' }>, row: readonly number[]): boolean {
  const steps = row.slice(1).map((value, at) => Math.sign(value - (row[at] ?? NaN)));
  switch (pattern.kind) {
    case 'trend':
      return steps[0] !== 0 && steps.every((step) => step === steps[0]);
    case 'alternation':
      return steps.every((step, at) => step !== 0 && (at === 0 || step === -(steps[at - 1] ?? 0)));
    case 'within':
      return row.every((value) => Math.abs(value) < pattern.sigmas);
    case 'both-sides':
      return row.every((value) => Math.abs(value) > pattern.sigmas) && Math.min(...row) < 0 && Math.max(...row) > 0;
  }
}
