import { gramsIn, pourInto, takeAll, takeMixed, type Composition } from '../../src/demo/plant-physics/composition.js';
import { HopperCells } from '../../src/demo/plant-physics/hopper-cells.js';
import type { Random } from '../../src/demo/plant-physics/random.js';

/** How sugar truly moves in a hopper, gram by gram. Knows nothing of least, likely and most. */
export interface TrueFlow {
  readonly levelGrams: number;
  /** What can flow out before the hopper starves. */
  readonly flowingGrams: number;
  pour(sugar: Composition): void;
  draw(grams: number): Composition;
  /** Opened and scraped, down to `leaving` grams. */
  scrapeOut(leaving: number): Composition;
}

export type TrueFlowName = 'mass flow' | 'mixing' | 'funnel with a dead zone';

/** Masses are invented; that a funnel empties its core first and keeps its wall to the last is in the handbooks. */
export const trueFlows: Readonly<Record<TrueFlowName, (random: Random) => TrueFlow>> = {
  'mass flow': () =>
    new HopperCells({ layerGrams: 50_000, pourMixing: 0, coreShare: 0, wallShare: 0, wallGrams: 0, clingingGrams: 0 }),
  mixing: () => new Stirred(),
  'funnel with a dead zone': (random) =>
    new HopperCells({
      ...{ layerGrams: 220_000, pourMixing: 0.1, coreShare: random.pick([0.4, 0.7, 1]) },
      ...{ wallShare: random.pick([0, 0.01]), wallGrams: random.whole(80_000, 300_000), clingingGrams: 45_000 },
    }),
};

export const trueFlowNames: readonly TrueFlowName[] = ['mass flow', 'mixing', 'funnel with a dead zone'];

/** All that is inside is mixed through and through, at every moment. */
class Stirred implements TrueFlow {
  private readonly inside: Composition = new Map();
  levelGrams = 0;

  get flowingGrams(): number {
    return this.levelGrams;
  }

  pour(sugar: Composition): void {
    this.levelGrams += gramsIn(sugar);
    pourInto(this.inside, sugar);
  }

  draw(grams: number): Composition {
    this.levelGrams -= grams;
    return takeMixed(this.inside, grams);
  }

  scrapeOut(leaving: number): Composition {
    const out = Math.max(0, this.levelGrams - leaving);
    return leaving === 0 ? this.drawAll() : this.draw(out);
  }

  private drawAll(): Composition {
    this.levelGrams = 0;
    return takeAll(this.inside);
  }
}
