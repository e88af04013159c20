import type { GradeCode } from './demo-plan.js';
import type { Minute } from './minutes.js';

/** A bag as the people of the plant know it, and as it is in truth. */
export interface LiveBag {
  readonly key: string;
  grade: GradeCode;
  readonly filledAt: Minute;
  readonly tareGrams: number;
  /** What is in it in truth. */
  trueGrams: number;
  /** As the laboratory will find it: that of the sample which stands for it. */
  moisturePercent: number;
  colourIu: number;
  /** From when on all its results are known. */
  resultsKnownAt: Minute;
  verdict: 'waiting' | 'released' | 'rejected' | 'concession';
  isHeld: boolean;
  /** Weighed on a scale that was overdue for its check: may be tipped, not sold. */
  readonly isDoubtful: boolean;
  isOpened: boolean;
  whereabouts: 'store' | 'gone' | 'set-aside';
}

/** The limits of the demo's grades. Invented, near what such sugars have. */
export const gradeLimits: Readonly<Record<GradeCode, { readonly moisturePercent: number; readonly colourIu: number }>> =
  {
    WS1: { moisturePercent: 0.06, colourIu: 25 },
    WS2: { moisturePercent: 0.06, colourIu: 45 },
    IND: { moisturePercent: 0.1, colourIu: 75 },
  };

export function isWithin(bag: LiveBag, grade: GradeCode): boolean {
  const limits = gradeLimits[grade];
  return (
    Number(bag.moisturePercent.toFixed(3)) <= limits.moisturePercent && Math.round(bag.colourIu) <= limits.colourIu
  );
}

/** The bags in the store, oldest first. */
export class BagStore {
  readonly bags: LiveBag[] = [];

  put(bag: LiveBag): void {
    this.bags.push(bag);
  }

  /** What may be tipped: released or conceded; where the grade may be tipped at risk, also waiting with no bad result. */
  tippable(grade: GradeCode, at: Minute): readonly LiveBag[] {
    return this.bags.filter((bag) => {
      if (bag.whereabouts !== 'store' || bag.isHeld || bag.grade !== grade) return false;
      if (bag.verdict === 'released' || bag.verdict === 'concession') return true;
      const seemsGood = bag.resultsKnownAt > at || isWithin(bag, grade);
      return bag.verdict === 'waiting' && grade === 'WS2' && seemsGood && bag.filledAt < at - 30;
    });
  }

  /** Drops what is gone and decided on, so that the days stay short. */
  forget(): void {
    const kept = this.bags.filter(({ whereabouts, verdict }) => {
      return verdict === 'waiting' || (whereabouts !== 'gone' && verdict !== 'rejected');
    });
    this.bags.splice(0, this.bags.length, ...kept);
  }
}
