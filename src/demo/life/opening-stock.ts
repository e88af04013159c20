import type { Random } from '../plant-physics/random.js';
import type { ShownLoad } from './act.js';
import type { GradeCode } from './demo-plan.js';
import type { LiveBag } from './live-bag.js';
import { instantOf, type Minute } from './minutes.js';
import type { World } from './world.js';

const bagsAtOnce = 40;

/** Day one begins with bags that nobody here has seen filled: weighed, sampled one by one, released. */
export function noteOpeningStock(world: World): void {
  const random = world.random('opening stock');
  const minute = world.plan.from;
  for (const [grade, count] of Object.entries(world.plan.openingBags) as [GradeCode, number][]) {
    const stock = Array.from({ length: count }, (_, place) => stockBag(world, random, { grade, place }));
    for (let first = 0; first < count; first += bagsAtOnce) {
      const bags = stock.slice(first, first + bagsAtOnce).map(({ shown }) => shown);
      world.diary.note(minute, 'dryer-operator', { kind: 'stock-bags', grade, bags });
    }
    for (const { bag } of stock) noteResults(world, minute, bag);
    world.diary.note(minute, 'quality', { kind: 'release-bags', bags: stock.map(({ bag }) => bag.key) });
  }
}

function stockBag(
  world: World,
  random: Random,
  of: { readonly grade: GradeCode; readonly place: number },
): { readonly bag: LiveBag; readonly shown: ShownLoad & { readonly bag: string } } {
  const key = `${of.grade}-stock-${of.place + 1}`;
  const trueGrams = Math.round(Math.min(1_048_000, Math.max(952_000, random.normal(1_000_000, 18_000))));
  const tareGrams = Math.round(random.normal(2600, 120));
  const bag: LiveBag = {
    key,
    grade: of.grade,
    filledAt: world.plan.from - 2000 + of.place,
    ...{ tareGrams, trueGrams },
    moisturePercent: Number(random.between(0.016, 0.03).toFixed(3)),
    colourIu: Math.round(of.grade === 'WS1' ? random.between(13, 20) : random.between(22, 36)),
    resultsKnownAt: world.plan.from,
    verdict: 'released',
    isHeld: false,
    isDoubtful: false,
    isOpened: false,
    whereabouts: 'store',
  };
  world.store.put(bag);
  const shown = { grossGrams: world.weigh('S1', trueGrams + tareGrams), tareGrams: world.weigh('S1', tareGrams) };
  return { bag, shown: { bag: key, ...shown } };
}

function noteResults(world: World, minute: Minute, { key, grade, moisturePercent, colourIu }: LiveBag): void {
  const sample = `${key}-own`;
  const at = instantOf(minute);
  world.diary.note(minute, 'analyst', { kind: 'sample-bag', sample, bag: key, takenAt: at });
  const result = { kind: 'report', sample, grade, isRetest: false, analysedAt: at } as const;
  const moisture = { property: 'moisture-percent', amount: moisturePercent.toFixed(3) } as const;
  world.diary.note(minute, 'analyst', { ...result, ...moisture });
  world.diary.note(minute, 'analyst', { ...result, property: 'colour-iu', amount: String(colourIu) });
}
