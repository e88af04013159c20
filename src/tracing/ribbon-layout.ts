import type { AxisSpan } from '../hopper/period-axis.js';
import type { RibbonBag, Ribbons } from './ribbons.js';

/** A shape with its corners in order, in the picture's own units: right and down from its left upper corner. */
export type Corners = readonly (readonly [x: number, y: number])[];

/** A bag on its way: an outline as wide as what may be at most in it, filled as wide as what likely is, solid for what surely is. */
export interface Ribbon {
  readonly bagId: string;
  readonly most: readonly Corners[];
  readonly likely: readonly Corners[];
  readonly least: readonly Corners[];
}

/** How something that was tipped takes part: drawn on, drawn as possible only, or not in it at all. */
export interface TippedBox {
  readonly x: number;
  readonly width: number;
  /** The last digits of the bag's number where there is room for them. */
  readonly label: string;
  readonly part: 'drawn' | 'possible' | 'none';
}

/** The amounts of a bag as three bars on one scale. */
export interface AmountRow {
  readonly bag: RibbonBag;
  readonly y: number;
  readonly leastWidth: number;
  readonly likelyWidth: number;
  readonly mostWidth: number;
}

export interface RibbonPicture {
  readonly width: number;
  readonly height: number;
  /** What part of the axis is shown. */
  readonly shown: AxisSpan;
  readonly ticks: readonly { readonly x: number; readonly grams: number }[];
  readonly boxes: readonly TippedBox[];
  readonly outX: number;
  readonly outWidth: number;
  readonly windows: readonly { readonly x: number; readonly width: number }[];
  /** Slanted lines across the packs asked for: what is meant is told by shape, not by colour. */
  readonly hatches: readonly (readonly [from: readonly [number, number], to: readonly [number, number]])[];
  readonly ribbons: readonly Ribbon[];
  readonly rows: readonly AmountRow[];
  /** Bags that have no row of their own: they stand in the table alone. */
  readonly withoutRow: number;
}

export const ribbonSizes = {
  width: 1000,
  tippedTop: 44,
  packedTop: 196,
  laneHeight: 30,
  rowsTop: 290,
  rowHeight: 24,
  barLeft: 110,
  barWidth: 440,
} as const;

/** More of them nobody tells apart; the table has all. */
const mostRibbons = 40;
/** More outlines than these lie over each other: then the bars alone say what is possible at most. */
const mostOutlines = 8;
const mostRows = 12;

/**
 * Lays a hopper period out as ribbons: above what was tipped, below what was packed, both by cumulative kilograms since the
 * last proven empty and on one scale, so that under first in, first out a ribbon falls straight down. Each ribbon
 * begins as wide as its bag and ends, within the packs asked for, as wide as its kilograms. Under it the three amounts of
 * each bag stand as bars. Pure: paper and screen draw the same.
 */
export function layOutRibbons(of: Ribbons): RibbonPicture {
  const { width, rowsTop, rowHeight } = ribbonSizes;
  const drawn = of.bags.filter(({ word }) => word !== 'possible').slice(0, mostRibbons);
  const shown = shownPart(of, drawn);
  const at = scaleOf(shown);
  const windows = of.windows.map(({ fromGrams, toGrams }) => {
    return { x: at(fromGrams), width: Math.max(2, at(toGrams) - at(fromGrams)) };
  });
  const rows = rowsOf(drawn.length > 0 ? drawn : of.bags);
  return {
    width,
    height: rowsTop + Math.max(1, rows.length + 1) * rowHeight,
    shown,
    ticks: ticksIn(shown).map((grams) => ({ x: at(grams), grams })),
    boxes: boxesOf(of, drawn, shown, at),
    outX: at(0),
    outWidth: at(of.outGrams) - at(0),
    windows,
    hatches: windows.flatMap(hatchesOf),
    ribbons: ribbonsIn(of.windows, drawn, at),
    rows,
    withoutRow: of.bags.length - rows.length,
  };
}

type Scale = (grams: number) => number;

/** The packs asked for and the bags that are drawn into them, with a margin. */
function shownPart({ windows, inGrams, outGrams }: Ribbons, drawn: readonly RibbonBag[]): AxisSpan {
  const spans = [...windows, ...drawn.flatMap((bag) => bag.spans)];
  const fromGrams = Math.min(...spans.map((span) => span.fromGrams));
  const toGrams = Math.max(...spans.map((span) => span.toGrams), fromGrams + 1);
  const margin = (toGrams - fromGrams) * 0.08;
  return {
    fromGrams: Math.max(0, fromGrams - margin),
    toGrams: Math.min(Math.max(inGrams, outGrams, toGrams), toGrams + margin),
  };
}

function scaleOf({ fromGrams, toGrams }: AxisSpan): Scale {
  const { width } = ribbonSizes;
  return (grams) => {
    const x = ((grams - fromGrams) / (toGrams - fromGrams)) * width;
    return rounded(Math.min(width, Math.max(0, x)));
  };
}

/** Steps of one, two or five with zeros, four to nine of them. */
function ticksIn({ fromGrams, toGrams }: AxisSpan): readonly number[] {
  const least = (toGrams - fromGrams) / 9;
  const power = 10 ** Math.floor(Math.log10(Math.max(1, least)));
  const step = [1, 2, 5, 10].map((times) => times * power).find((one) => one >= least) ?? 10 * power;
  const ticks: number[] = [];
  for (let at = Math.ceil(fromGrams / step) * step; at <= toGrams; at += step) ticks.push(at);
  return ticks;
}

function boxesOf({ additions, bags }: Ribbons, drawn: readonly RibbonBag[], shown: AxisSpan, at: Scale) {
  const isDrawn = new Set(drawn.map(({ bagId }) => bagId));
  const known = new Map(bags.map((bag) => [bag.bagId, bag]));
  return additions
    .filter(({ fromGrams, toGrams }) => toGrams > shown.fromGrams && fromGrams < shown.toGrams)
    .map(({ bagIds, fromGrams, toGrams }): TippedBox => {
      const x = at(fromGrams);
      const width = at(toGrams) - x;
      const bag = bagIds.map((id) => known.get(id)).find((one) => one !== undefined);
      const part = bagIds.some((id) => isDrawn.has(id)) ? 'drawn' : bag === undefined ? 'none' : 'possible';
      return { x, width, label: labelOf(bag, bagIds.length, width), part };
    });
}

function labelOf(bag: RibbonBag | undefined, bagCount: number, width: number): string {
  if (bag === undefined || width < 40) return '';
  const digits = bag.name.slice(-(width < 80 ? 4 : 8));
  return bagCount > 1 ? `${digits}?` : digits;
}

/** In the order of tipping, one beside the other, the likely kilograms fill the packs asked for. */
function ribbonsIn(windows: readonly AxisSpan[], drawn: readonly RibbonBag[], at: Scale): readonly Ribbon[] {
  const whole = windows.reduce((sum, { fromGrams, toGrams }) => sum + toGrams - fromGrams, 0);
  const begin = ({ spans }: RibbonBag): number => spans[0]?.fromGrams ?? 0;
  let filled = 0;
  return [...drawn]
    .sort((one, other) => begin(one) - begin(other))
    .map((bag) => {
      const likely = spanWithin(filled, filled + bag.likelyGrams, whole);
      filled = likely.toGrams;
      const middle = (likely.fromGrams + likely.toGrams) / 2;
      const wide = (grams: number): AxisSpan => aroundWithin(middle, Math.min(grams, whole), whole);
      const least = wide(Math.min(bag.leastGrams, likely.toGrams - likely.fromGrams));
      return {
        bagId: bag.bagId,
        most: drawn.length > mostOutlines ? [] : quads(bag, wide(bag.mostGrams), windows, at),
        likely: quads(bag, likely, windows, at),
        least: bag.leastGrams > 0 ? quads(bag, least, windows, at) : [],
      };
    });
}

function spanWithin(fromGrams: number, toGrams: number, whole: number): AxisSpan {
  return { fromGrams: Math.min(fromGrams, whole), toGrams: Math.min(toGrams, whole) };
}

/** A stretch of so many grams about a middle, pushed back inside where it would run out. */
function aroundWithin(middle: number, grams: number, whole: number): AxisSpan {
  const fromGrams = Math.min(Math.max(0, middle - grams / 2), whole - grams);
  return { fromGrams, toGrams: fromGrams + grams };
}

/** From the whole of a bag down to a stretch of the packs; one shape for each piece of the axis that the stretch covers. */
function quads(bag: RibbonBag, part: AxisSpan, windows: readonly AxisSpan[], at: Scale): readonly Corners[] {
  const { tippedTop, packedTop, laneHeight } = ribbonSizes;
  const [top, bottom] = [tippedTop + laneHeight, packedTop];
  const [span] = [...bag.spans].sort((one, other) => other.toGrams - other.fromGrams - (one.toGrams - one.fromGrams));
  if (span === undefined) return [];
  const length = part.toGrams - part.fromGrams;
  const along = (grams: number): number => {
    const share = length === 0 ? 0 : (grams - part.fromGrams) / length;
    return at(span.fromGrams + share * (span.toGrams - span.fromGrams));
  };
  const shapes: Corners[] = [];
  let passed = 0;
  for (const window of windows) {
    const begin = Math.max(part.fromGrams, passed);
    const end = Math.min(part.toGrams, passed + window.toGrams - window.fromGrams);
    if (begin < end) {
      const [left, right] = [window.fromGrams + begin - passed, window.fromGrams + end - passed];
      shapes.push([
        [along(begin), top],
        [along(end), top],
        [at(right), bottom],
        [at(left), bottom],
      ]);
    }
    passed += window.toGrams - window.fromGrams;
  }
  return shapes;
}

function rowsOf(bags: readonly RibbonBag[]): readonly AmountRow[] {
  const { rowsTop, rowHeight, barWidth } = ribbonSizes;
  const first = bags.slice(0, mostRows);
  const most = Math.max(1, ...first.map(({ mostGrams, likelyGrams }) => Math.max(mostGrams, likelyGrams)));
  const wide = (grams: number): number => rounded((grams / most) * barWidth);
  return first.map((bag, place) => ({
    bag,
    y: rowsTop + place * rowHeight,
    leastWidth: wide(bag.leastGrams),
    likelyWidth: wide(bag.likelyGrams),
    mostWidth: wide(bag.mostGrams),
  }));
}

const hatchStep = 12;

/** Lines that rise by as much as they go right, cut off at the edges. */
function hatchesOf({ x, width }: RibbonPicture['windows'][number]): RibbonPicture['hatches'] {
  const { packedTop, laneHeight } = ribbonSizes;
  const bottom = packedTop + laneHeight;
  const hatches: RibbonPicture['hatches'][number][] = [];
  for (let foot = x - laneHeight + hatchStep / 2; foot < x + width; foot += hatchStep) {
    const left = rounded(Math.max(foot, x));
    const right = rounded(Math.min(foot + laneHeight, x + width));
    hatches.push([
      [left, rounded(bottom - (left - foot))],
      [right, rounded(bottom - (right - foot))],
    ]);
  }
  return hatches;
}

function rounded(length: number): number {
  return Math.round(length * 100) / 100;
}
