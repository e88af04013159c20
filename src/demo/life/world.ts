import { seededRandom, type Random } from '../plant-physics/random.js';
import { readScale, type TrueScale } from '../plant-physics/scale-reading.js';
import type { Doer } from './act.js';
import type { DemoPlan } from './demo-plan.js';
import { Diary } from './diary.js';
import { Incidents } from './incidents.js';
import { BagStore } from './live-bag.js';
import { shiftAt, type Minute } from './minutes.js';
import { TruthLedger } from './truth-ledger.js';

/** The scales of the demo, as they are in truth. What the house knows of them is in `set-up/plant-records.ts`. */
export const trueScales = {
  S1: { intervalGrams: 500, maximumErrorGrams: 1000, biasGrams: 180, spreadGrams: 150 },
  S2: { intervalGrams: 500, maximumErrorGrams: 1000, biasGrams: -220, spreadGrams: 150 },
  P1: { intervalGrams: 20, maximumErrorGrams: 50, biasGrams: 6, spreadGrams: 8 },
} as const satisfies Record<string, TrueScale>;

/** What all crews share: the plan, the store, the diary and the truth. */
export class World {
  readonly diary = new Diary();
  readonly ledger = new TruthLedger();
  readonly store = new BagStore();
  readonly incidents: Incidents;
  private readonly scaleRandom: Random;

  constructor(readonly plan: DemoPlan) {
    this.incidents = new Incidents(plan, this.random('incidents'));
    this.scaleRandom = this.random('scales');
  }

  random(name: string): Random {
    return seededRandom(this.plan.seed, name);
  }

  weigh(scale: keyof typeof trueScales, trueGrams: number): number {
    return readScale(trueScales[scale], trueGrams, this.scaleRandom);
  }

  /** The lead of the shift that a minute falls in; at a change the one who goes. */
  leadAt(minute: Minute): Doer {
    const { code } = shiftAt(minute);
    if (code === 'M') return 'lead-M';
    return code === 'A' ? 'lead-A' : 'lead-N';
  }
}
