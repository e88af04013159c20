import type { Random } from './random.js';

/** A machine that fills packs: how fast, to what weight, how evenly. */
export interface MachineNature {
  readonly packsPerMinute: number;
  readonly setpointGrams: number;
  readonly spreadGrams: number;
  /** Share of packs that the check weigher throws out. */
  readonly rejectShare: number;
}

/** Pack weights in truth: normal about a setpoint that wanders a little. */
export class PackingMachine {
  private wanderGrams = 0;
  private behind = 0;

  constructor(
    readonly nature: MachineNature,
    private readonly random: Random,
  ) {}

  /** How many packs come in the next minute, good and thrown out. */
  nextMinute(): { readonly packCount: number; readonly rejectCount: number } {
    this.wanderGrams = this.wanderGrams * 0.99 + this.random.normal(0, 0.02);
    this.behind += this.nature.packsPerMinute * this.random.between(0.97, 1.03);
    const packCount = Math.floor(this.behind);
    this.behind -= packCount;
    const expected = packCount * this.nature.rejectShare;
    return { packCount, rejectCount: Math.floor(expected) + (this.random.happens(expected % 1) ? 1 : 0) };
  }

  /** The grams of so many accepted packs together. */
  gramsOf(packCount: number): number {
    if (packCount === 0) return 0;
    const { setpointGrams, spreadGrams } = this.nature;
    const centre = packCount * (setpointGrams + this.wanderGrams);
    return Math.round(this.random.normal(centre, spreadGrams * Math.sqrt(packCount)));
  }

  /** The grams of one pack that is thrown out: too light, or too heavy. */
  gramsOfReject(): number {
    const { setpointGrams, spreadGrams } = this.nature;
    const side = this.random.happens(0.7) ? -1 : 1;
    return Math.round(setpointGrams + side * this.random.between(4, 9) * spreadGrams);
  }

  /** One pack, to a tenth of a gram, as a hand takes it for weighing. */
  decigramsOfPack(): number {
    return Math.round(this.random.normal(this.nature.setpointGrams + this.wanderGrams, this.nature.spreadGrams) * 10);
  }
}
