import { pourInto } from '../../src/demo/plant-physics/composition.js';
import { seededRandom } from '../../src/demo/plant-physics/random.js';
import type { Membership, Target } from '../../src/core/hopper-flow/target-steps.js';
import type { Fault, Piece, RecordedPeriod } from './recorded-period.js';
import { minuteSeconds, type TrueCell, type TruePlant } from './true-plant.js';

export type TargetKind = 'pallet' | 'delivery' | 'printed minutes' | 'lot';

/** A set of packs as somebody asks for it: what the records make of it in each period, and what is truly in it. */
export interface TruthTarget {
  readonly kind: TargetKind;
  readonly exits: readonly Target[];
  readonly trueGrams: ReadonlyMap<string, number>;
}

interface Asked {
  readonly kind: TargetKind;
  readonly truly: (cell: TrueCell) => boolean;
  readonly byRecords: (piece: Piece) => Membership;
}

const coderLimitSeconds = 5 * minuteSeconds;

/** All pallets, some deliveries, some stretches of printed minutes, and each line's lot. */
export function targetsOf(
  plant: TruePlant,
  recorded: readonly RecordedPeriod[],
  faults: ReadonlySet<Fault>,
): readonly TruthTarget[] {
  const random = seededRandom(plant.seed, 'targets');
  const pallets = palletsOf(plant);
  const deliveries = Array.from({ length: 6 }, () => pallets.filter(() => random.happens(0.12)));
  const limitSeconds = faults.has('coder') ? coderLimitSeconds : 0;
  const offsetSeconds = random.whole(-coderLimitSeconds, coderLimitSeconds);
  const endsAt = plant.periods.at(-1)?.endsAt ?? 0;
  const cells = plant.periods.flatMap((period) => period.cells);
  const minutes = Array.from({ length: 14 }, () => {
    const fromAt = random.whole(0, endsAt);
    const toAt = fromAt + random.whole(5, 45) * minuteSeconds;
    return printedBetween({ fromAt, toAt, limitSeconds, offsetSeconds: limitSeconds === 0 ? 0 : offsetSeconds });
  });
  const lines = [...new Set(pallets.map(({ line }) => line))];
  const asked = [
    ...pallets.map((pallet) => packsOf('pallet', [pallet])),
    ...deliveries.map((some) => packsOf('delivery', some)),
    ...minutes,
    ...lines.map((line) => packsOf('lot', [{ line, fromCount: 0, toCount: Infinity }])),
  ];
  return asked.map((one) => settle(cells, recorded, one));
}

interface Range {
  readonly line: number;
  readonly fromCount: number;
  readonly toCount: number;
}

function palletsOf({ periods, palletPackCount }: TruePlant): readonly Range[] {
  const cells = periods.flatMap((period) => period.cells);
  return [0, 1].flatMap((line) => {
    const packCount = cells.filter((cell) => cell.line === line).at(-1)?.toCount ?? 0;
    return Array.from({ length: Math.ceil(packCount / palletPackCount) }, (_, place) => {
      return { line, fromCount: place * palletPackCount, toCount: (place + 1) * palletPackCount };
    });
  });
}

function packsOf(kind: TargetKind, ranges: readonly Range[]): Asked {
  const isIn = (packs: Range) =>
    ranges.some(({ line, fromCount, toCount }) => {
      return packs.line === line && packs.fromCount >= fromCount && packs.toCount <= toCount;
    });
  return { kind, truly: isIn, byRecords: (piece) => (isIn(piece) ? 'in' : 'out') };
}

/** The coder prints its own time; what it is off by is known no better than its limit. */
function printedBetween(asked: {
  readonly fromAt: number;
  readonly toAt: number;
  readonly limitSeconds: number;
  readonly offsetSeconds: number;
}): Asked {
  const { fromAt, toAt, limitSeconds, offsetSeconds } = asked;
  return {
    kind: 'printed minutes',
    truly: ({ at }) => fromAt <= at + offsetSeconds && at + offsetSeconds < toAt,
    byRecords: ({ earliestAt, latestAt }) => {
      if (latestAt + limitSeconds < fromAt || earliestAt - limitSeconds >= toAt) return 'out';
      return earliestAt - limitSeconds >= fromAt && latestAt + limitSeconds < toAt ? 'in' : 'maybe';
    },
  };
}

function settle(
  cells: readonly TrueCell[],
  recorded: readonly RecordedPeriod[],
  { kind, truly, byRecords }: Asked,
): TruthTarget {
  const trueGrams = new Map<string, number>();
  for (const cell of cells) if (truly(cell)) pourInto(trueGrams, cell.sugar);
  const exits = recorded.map(({ pieces }) => {
    const members = new Map<string, Membership>();
    for (const piece of pieces) {
      const is = byRecords(piece);
      if (is !== 'out') members.set(piece.id, is);
    }
    return members;
  });
  return { kind, exits, trueGrams };
}
