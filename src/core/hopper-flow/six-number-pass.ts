import type { GroupPart } from './group-content.js';
import type { Cut } from './prepare-period.js';
import type { Step, TargetSteps } from './target-steps.js';

/**
 * Grams of the group in the target and what the six numbers contradict each other by (0: they do not), at which step.
 */
export interface PassResult {
  readonly leastGrams: number;
  readonly mostGrams: number;
  readonly contradictedByGrams: number;
  readonly contradictedAtStep: number;
}

/**
 * The six-number pass: the set of possible (a, b), grams of the group that left through the target and through
 * everything else, is kept as limits of a, of b and of their sum. Exits let it grow by their upper masses; what was
 * poured of the group (upper) limits the sum from above, and `mustHaveLeft` from below: what was poured (lower) less
 * what can still be inside.
 *
 * `mustHaveLeft` is carried along instead of being poured − level each time: an exit adds its lower mass, an addition
 * takes off only what it can hold *besides* the group, a level limit starts it anew. For exact masses that is the same
 * number; with limits it does not count the doubt about a bag of the group twice.
 *
 * `levels: 'disbelieved'` leaves `mustHaveLeft` out: least is then 0, and most rests only on what was poured and what
 * left, in order.
 * @see hopper-bounds.md, "The pass"
 */
export function passSixNumbers(
  target: TargetSteps,
  parts: readonly GroupPart[],
  levels: 'believed' | 'disbelieved',
): PassResult {
  const first = parts[0];
  const start = first === undefined ? target.endIndex : (target.stepIndexByCut[first.cutIndex] ?? target.endIndex);
  // A bag that went in after the last of the target cannot be in it, and later levels cannot put it there.
  if (start >= target.targetEndIndex)
    return { leastGrams: 0, mostGrams: 0, contradictedByGrams: 0, contradictedAtStep: -1 };
  const pass = new SixNumbers(target.steps[start], parts, levels === 'believed');
  for (let at = start; at < target.endIndex; at += 1) {
    const step = target.steps[at];
    if (step === undefined) break;
    if (step.kind === 'cut') pass.cut(step.cut, target.stepIndexByCut[pass.nextCutIndex] === at);
    else pass.exit(step.isInTarget, step.lowerGrams, step.upperGrams);
    pass.tighten();
    const contradictedByGrams = pass.contradictedByGrams();
    if (contradictedByGrams > 0) return { leastGrams: 0, mostGrams: 0, contradictedByGrams, contradictedAtStep: at };
    if (pass.hasLeftWhole()) break;
  }
  return { leastGrams: pass.aL, mostGrams: pass.aU, contradictedByGrams: 0, contradictedAtStep: -1 };
}

/** Mutable on purpose, for speed; lives inside one pass. a: through the target; b: through everything else; s: both. */
class SixNumbers {
  aL = 0;
  aU = 0;
  private bL = 0;
  private bU = 0;
  private sL = 0;
  private sU = 0;
  private pouredLower = 0;
  private pouredUpper = 0;
  private mustHaveLeft: number;
  private nextPart = 0;

  constructor(
    firstStep: Step | undefined,
    private readonly parts: readonly GroupPart[],
    private readonly believesLevels: boolean,
  ) {
    // Nothing of the group was poured before; what can be inside then is all besides it.
    this.mustHaveLeft = firstStep?.kind === 'cut' ? -firstStep.cut.levelUpperBeforeGrams : 0;
    if (!believesLevels) this.mustHaveLeft = -Infinity;
  }

  get nextCutIndex(): number {
    return this.parts[this.nextPart]?.cutIndex ?? -1;
  }

  cut(cut: Cut, isOfGroup: boolean): void {
    const part = isOfGroup ? this.parts[this.nextPart] : undefined;
    if (part === undefined) this.mustHaveLeft -= cut.upperGrams;
    else {
      this.pouredLower += part.lowerGrams;
      this.pouredUpper += part.upperGrams;
      this.mustHaveLeft -= part.otherUpperGrams;
      this.nextPart += 1;
    }
    if (this.believesLevels) this.mustHaveLeft = Math.max(this.mustHaveLeft, this.pouredLower - cut.ceilingGrams);
  }

  exit(isInTarget: boolean, lowerGrams: number, upperGrams: number): void {
    if (isInTarget) this.aU += upperGrams;
    else this.bU += upperGrams;
    this.sU += upperGrams;
    this.mustHaveLeft += lowerGrams;
  }

  tighten(): void {
    this.sL = Math.max(this.sL, this.mustHaveLeft);
    this.sU = Math.min(this.sU, this.pouredUpper);
    const { aU, bU, sU, aL, bL, sL } = this;
    this.aU = Math.min(aU, sU - bL);
    this.bU = Math.min(bU, sU - aL);
    this.sU = Math.min(sU, aU + bU);
    this.aL = Math.max(aL, sL - this.bU);
    
    this.sL = Math.max(sL, aL + bL);
  }

  contradictedByGrams(): number {
    return Math.max(this.aL - this.aU, this.bL - this.bU, this.sL - this.sU);
  }

  /** The group can no longer be inside: all that it can weigh has left, and no more of it will come. */
  hasLeftWhole(): boolean {
    return this.sL >= this.pouredUpper && this.nextPart === this.parts.length;
  }
}
