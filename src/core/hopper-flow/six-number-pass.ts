import type { BeforeTarget } from './before-target.js';
import type { GroupPart } from './group-content.js';
import type { TargetSteps } from './target-steps.js';

/** What is known of a group after the target's last exit. */
export interface AfterTarget {
  /** Grams of the group in the target. */
  readonly leastGrams: number;
  readonly mostGrams: number;
  /** The most of it that left elsewhere, and the least that was poured. */
  readonly leftElsewhereUpperGrams: number;
  readonly pouredLowerGrams: number;
}

/**
 * The six-number pass from the target's first exit to its last: the set of possible (a, b), grams of the group that
 * left through the target and through everything else, is kept as limits of a, of b and of their sum s. Exits let it
 * grow by their upper masses; what was poured of the group (upper) limits s from above, and `mustHaveLeft` from below:
 * what was poured (lower) less what can still be inside.
 *
 * `mustHaveLeft` is carried along instead of being poured − level each time: an exit adds its lower mass, an addition
 * takes off only what it can hold *besides* the group, a level limit starts it anew. For exact masses that is the same
 * number; with limits it does not count the doubt about a bag of the group twice.
 *
 * @param parts those additions of the group that are not counted in `before`, in order, all of them among the steps
 * @param startStep where to begin: 0, or the group's first addition
 * @param levels `disbelieved` leaves `mustHaveLeft` out: least is then 0, and most rests only on what was poured and
 * what left, in order
 * @see hopper-bounds.md, "The pass"
 * @example
 * // the 30 kg of packs after a bag of 100 kg, alone in the hopper
 * passSixNumbers({ target: mergeExits(period, [1]), startStep: 0 }, before, [], 'believed').leastGrams // 30_000
 */
export function passSixNumbers(
  { target, startStep }: { readonly target: TargetSteps; readonly startStep: number },
  before: BeforeTarget,
  parts: readonly GroupPart[],
  levels: 'believed' | 'disbelieved',
): AfterTarget {
  const pass = new SixNumbers(before, levels === 'believed');
  let nextPart = 0;
  let hasLeftWhole = pass.hasLeftWhole() && parts.length === 0;
  for (let at = startStep; at < target.steps.length && !hasLeftWhole; at += 1) {
    const step = target.steps[at];
    if (step === undefined) break;
    if (step.kind === 'exits') pass.leave(step.isInTarget, step.lowerGrams, step.upperGrams);
    else {
      const part = parts[nextPart]?.cutIndex === step.cutIndex ? parts[nextPart] : undefined;
      if (part) nextPart += 1;
      pass.pour(part, step.cut.upperGrams, step.cut.ceilingGrams);
    }
    pass.tighten();
    hasLeftWhole = pass.hasLeftWhole() && nextPart === parts.length;
  }
  return {
    leastGrams: pass.aL,
    mostGrams: pass.aU,
    leftElsewhereUpperGrams: pass.bU,
    pouredLowerGrams: pass.pouredLower,
  };
}

/** Mutable on purpose, for speed; lives inside one pass. The note's letters. */
class SixNumbers {
  aL = 0;
  aU = 0;
  bU: number;
  pouredLower: number;
  private bL: number;
  private sL: number;
  private sU: number;
  private pouredUpper: number;
  private mustHaveLeft: number;

  constructor(
    before: BeforeTarget,
    private readonly believesLevels: boolean,
  ) {
    this.bL = this.sL = believesLevels ? before.leftLowerGrams : 0;
    this.bU = this.sU = before.leftUpperGrams;
    this.pouredLower = before.pouredLowerGrams;
    this.pouredUpper = before.pouredUpperGrams;
    this.mustHaveLeft = believesLevels ? before.mustHaveLeftGrams : -Infinity;
  }

  pour(part: GroupPart | undefined, upperGrams: number, ceilingGrams: number): void {
    if (part === undefined) this.mustHaveLeft -= upperGrams;
    else {
      this.pouredLower += part.lowerGrams;
      this.pouredUpper += part.upperGrams;
      this.mustHaveLeft -= part.otherUpperGrams;
    }
    if (!this.believesLevels) return;
    this.mustHaveLeft = Math.max(this.mustHaveLeft, this.pouredLower - ceilingGrams);
  }

  leave(isInTarget: boolean, lowerGrams: number, upperGrams: number): void {
    if (isInTarget) this.aU += upperGrams;
    else this.bU += upperGrams;
    this.sU += upperGrams;
    this.mustHaveLeft += lowerGrams;
  }

  tighten(): void {
    const sL = Math.max(this.sL, this.mustHaveLeft);
    const sU = Math.min(this.sU, this.pouredUpper);
    const { aL, bL } = this;
    const aU = Math.min(this.aU, sU - bL);
    const bU = Math.min(this.bU, sU - aL);
    this.sU = Math.min(sU, aU + bU);
    this.aL = Math.max(aL, sL - bU);
    this.bL = Math.max(bL, sL - aU);
    this.sL = Math.max(sL, aL + bL);
    this.aU = aU;
    this.bU = bU;
  }

  /** All that was poured of the group, however heavy it was, is no longer inside. */
  hasLeftWhole(): boolean {
    return this.sL >= this.pouredUpper;
  }
}
