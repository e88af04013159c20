/** The share of the new bag in what leaves, when so many grams have been packed since it began to go in. */
export interface StepPoint {
  readonly grams: number;
  readonly share: number;
}

/** What a step from one bag to the next says of a hopper without any model. */
export interface StepMoments {
  /** How much is packed on average until a gram comes out: the hold-up of all that moves. */
  readonly meanGrams: number;
  /** The spread about it, in grams squared. */
  readonly varianceGramsSquared: number;
  /** mean²/variance: as many equal zones spread as much, if no part of it is plug. */
  readonly zoneCount: number;
}

/**
 * The mean and the spread of the residence time from a step, by trapezoids.
 *
 * Mean ∫(1 − F)dm, variance 2∫m(1 − F)dm − mean², N = mean²/variance. Quick and free of a model, but trapezoids between
 * few samples smooth the step, and what is cut off at the end is missing: a first guess for the fit of a trial.
 *
 * @param points two or more, by rising grams (equal ones count for nothing), the last where hardly anything of the old
 * bag leaves
 * @throws RangeError on fewer or falling points, and where they leave no mean or no spread
 * @see quality.md 4.3 (calibration from a step)
 * @example momentsOfStep([{ grams: 0, share: 0 }, { grams: 1000, share: 1 }]).meanGrams // 500
 */
export function momentsOfStep(points: readonly StepPoint[]): StepMoments {
  if (points.length < 2) throw new RangeError('A step needs two points or more');
  let [mean, second] = [0, 0];
  for (const [place, { grams, share }] of points.entries()) {
    const before = points[place - 1];
    if (before === undefined) continue;
    const width = grams - before.grams;
    if (!(width >= 0)) throw new RangeError('The points of a step must stand by rising grams');
    mean += (width * (1 - before.share + 1 - share)) / 2;
    second += (width * (before.grams * (1 - before.share) + grams * (1 - share))) / 2;
  }
  const variance = 2 * second - mean ** 2;
  if (!(mean > 0 && variance > 0)) throw new RangeError('These points leave no mean or no spread');
  return { meanGrams: mean, varianceGramsSquared: variance, zoneCount: mean ** 2 / variance };
}
