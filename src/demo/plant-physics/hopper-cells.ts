import { gramsIn, pourInto, takeAll, takeMixed, type Composition } from './composition.js';

/** How sugar moves in this hopper. Invented, and on purpose none of the flow models that the tool computes with. */
export interface HopperNature {
  /** Sugar lies in layers of about this much. */
  readonly layerGrams: number;
  /** Share of the lower neighbour that a fresh layer is stirred with. */
  readonly pourMixing: number;
  /** Share of what leaves that comes down the core from the top layer, past all others. */
  readonly coreShare: number;
  /** Share of what leaves that changes places with the sugar at the wall. */
  readonly wallShare: number;
  /** Sugar that clings to the wall once the hopper is in use. */
  readonly wallGrams: number;
  /** What stays at the wall when nothing flows any more. */
  readonly clingingGrams: number;
}

export const usualHopper: HopperNature = {
  layerGrams: 220_000,
  pourMixing: 0.3,
  coreShare: 0.12,
  wallShare: 0.04,
  wallGrams: 70_000,
  clingingGrams: 9_000,
};

/** A hopper as it is in truth: layers that mix a little, a fast core, and a dead zone at the wall. Conserves every gram. */
export class HopperCells {
  /** From the outlet up. */
  private readonly layers: Composition[] = [];
  private readonly wall: Composition = new Map();
  private layeredGrams = 0;
  private atWallGrams = 0;

  constructor(private readonly nature: HopperNature) {}

  get levelGrams(): number {
    return this.layeredGrams + this.atWallGrams;
  }

  /** What can flow out before the hopper starves. */
  get flowingGrams(): number {
    return this.layeredGrams + Math.max(0, this.atWallGrams - this.nature.clingingGrams);
  }

  pour(sugar: Composition): void {
    let rest = gramsIn(sugar);
    this.layeredGrams += rest;
    while (rest > 0) {
      const piece = takeMixed(sugar, Math.min(rest, this.nature.layerGrams));
      rest -= gramsIn(piece);
      this.lay(piece);
    }
    this.coatWall();
  }

  /** @throws RangeError when less than that can flow */
  draw(grams: number): Composition {
    if (grams > this.flowingGrams) throw new RangeError(`${grams} g cannot flow from ${this.flowingGrams} g`);
    const drawn: Composition = new Map();
    const fromCore = Math.min(Math.floor(grams * this.nature.coreShare), this.topGrams());
    if (fromCore > 0) pourInto(drawn, this.takeFrom(this.layers.length - 1, fromCore));
    let rest = grams - fromCore;
    while (rest > 0 && this.layers.length > 0) {
      const piece = this.takeFrom(0, Math.min(rest, gramsIn(this.layers[0] ?? new Map())));
      rest -= gramsIn(piece);
      pourInto(drawn, piece);
    }
    if (rest > 0) pourInto(drawn, this.takeWall(rest));
    return this.exchangedWithWall(drawn);
  }

  /** Opened and scraped: everything that was still inside, down to `leaving` grams. */
  scrapeOut(leaving = 0): Composition {
    const scraped: Composition = new Map();
    for (const layer of this.layers.splice(0)) pourInto(scraped, takeAll(layer));
    this.layeredGrams = 0;
    const fromWall = Math.max(0, this.atWallGrams - leaving);
    if (fromWall > 0) pourInto(scraped, this.takeWall(fromWall));
    return scraped;
  }

  private lay(piece: Composition): void {
    const below = this.layers.at(-1);
    if (below === undefined) {
      this.layers.push(piece);
      return;
    }
    const up = takeMixed(below, Math.floor(gramsIn(below) * this.nature.pourMixing));
    const down = takeMixed(piece, Math.min(gramsIn(up), gramsIn(piece)));
    pourInto(piece, up);
    pourInto(below, down);
    this.layers.push(piece);
  }

  private coatWall(): void {
    const missing = Math.min(this.nature.wallGrams - this.atWallGrams, this.layeredGrams);
    for (let rest = missing; rest > 0;) {
      const at = this.layers.length - 1;
      const piece = this.takeFrom(at, Math.min(rest, this.topGrams()));
      rest -= gramsIn(piece);
      this.atWallGrams += gramsIn(piece);
      pourInto(this.wall, piece);
    }
  }

  private exchangedWithWall(drawn: Composition): Composition {
    const swapped = Math.min(Math.floor(gramsIn(drawn) * this.nature.wallShare), this.atWallGrams);
    const toWall = takeMixed(drawn, swapped);
    pourInto(drawn, takeMixed(this.wall, swapped));
    pourInto(this.wall, toWall);
    return drawn;
  }

  private topGrams(): number {
    const top = this.layers.at(-1);
    return top === undefined ? 0 : gramsIn(top);
  }

  private takeFrom(at: number, grams: number): Composition {
    const layer = this.layers[at];
    if (layer === undefined) throw new RangeError(`No layer ${at}`);
    const taken = takeMixed(layer, grams);
    this.layeredGrams -= grams;
    if (layer.size === 0) this.layers.splice(at, 1);
    return taken;
  }

  private takeWall(grams: number): Composition {
    this.atWallGrams -= grams;
    return takeMixed(this.wall, grams);
  }
}
