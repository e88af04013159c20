import { momentsOfStep, type StepPoint } from './step-moments.js';

/** A colour in solution (ICUMSA units) with the standard uncertainty of its result. */
export interface MeasuredColour {
  readonly colourIu: number;
  /** Above 0: from the method's repeatability r as r/2.8, or from the laboratory's own retests. */
  readonly standardIu: number;
}

/** Sugar taken behind the hopper during a trial, and what it was taken from. */
export interface TracerSample extends MeasuredColour {
  /** Grams packed since the second bag began to go in; a sample of one pack has from = to, a composite a stretch. */
  readonly fromGrams: number;
  readonly toGrams: number;
}

/**
 * A tracer trial: two bags that differ in colour, one after the other through the hopper.
 *
 * The first fills all that moves, wall to wall; the second follows with no gap and lasts until the last sample; packs
 * leave as on any day. Colour blends by mass (Beer's law), so it tells the share of the second bag.
 */
export interface TracerTrial {
  readonly before: MeasuredColour;
  readonly after: MeasuredColour;
  /** By rising grams. */
  readonly samples: readonly TracerSample[];
}

/**
 * Why a trial says nothing:
 * `too-few-samples` fewer than 8;
 * `colours-too-alike` the bags differ by less than 10 standard uncertainties;
 * `rise-not-covered` no sample below 30 % or none above 90 % of the second bag, or none between;
 * `does-not-settle` no hold-up and number of zones stand out;
 * `more-mixed-than-one-zone` it spreads more than one stirred zone: something bypasses or stands still;
 * `hardly-mixed` more zones than are told from first in, first out;
 * `does-not-fit` the samples lie farther from the best curve than chance allows once in a thousand trials.
 * All limits are our own choice, no source.
 */
export type TrialProblem =
  | 'too-few-samples'
  | 'colours-too-alike'
  | 'rise-not-covered'
  | 'does-not-settle'
  | 'more-mixed-than-one-zone'
  | 'hardly-mixed'
  | 'does-not-fit';

const fewestSamples = 8;
const leastContrast = 10;

/**
 * The shares of the second bag in the samples, as colour tells them; below 0 and above 1 by what the laboratory is off.
 * @example sharesOfAfter(trial)[0] // { grams: 50_000, share: 0.012… }
 */
export function sharesOfAfter({ before, after, samples }: TracerTrial): readonly StepPoint[] {
  const contrast = after.colourIu - before.colourIu;
  return samples.map(({ fromGrams, toGrams, colourIu }) => {
    return { grams: (fromGrams + toGrams) / 2, share: (colourIu - before.colourIu) / contrast };
  });
}

/**
 * What stands in the way of fitting a trial, seen before it is tried.
 * @returns null where nothing does
 * @throws RangeError on numbers that are no colours, uncertainties or grams in order
 * @example problemBeforeFit({ before, after: before, samples }) // 'colours-too-alike'
 */
export function problemBeforeFit(trial: TracerTrial): TrialProblem | null {
  assertTrial(trial);
  const { before, after, samples } = trial;
  if (samples.length < fewestSamples) return 'too-few-samples';
  const worst = samples.reduce((most, { standardIu }) => Math.max(most, standardIu), 0);
  const doubt = Math.hypot(before.standardIu, after.standardIu, worst);
  if (Math.abs(after.colourIu - before.colourIu) < leastContrast * doubt) return 'colours-too-alike';
  const shares = sharesOfAfter(trial).map(({ share }) => share);
  const covers = [(share: number) => share < 0.3, (share: number) => share > 0.3 && share < 0.9, isHigh];
  return covers.every((isThere) => shares.some(isThere)) ? null : 'rise-not-covered';
}

const isHigh = (share: number): boolean => share > 0.9;

/**
 * The mean and spread that a fit starts from.
 * @returns null where the samples leave none
 * @example guessFromStep(trial)?.zoneCount // 3.07…
 */
export function guessFromStep(trial: TracerTrial): { readonly meanGrams: number; readonly zoneCount: number } | null {
  const points = sharesOfAfter(trial).map(({ grams, share }) => ({ grams, share: Math.min(1, Math.max(0, share)) }));
  try {
    return momentsOfStep([{ grams: 0, share: 0 }, ...points]);
  } catch {
    return null;
  }
}

function assertTrial({ before, after, samples }: TracerTrial): void {
  for (const { colourIu, standardIu } of [before, after, ...samples]) {
    if (!(colourIu >= 0 && standardIu > 0) || !Number.isFinite(colourIu + standardIu)) {
      throw new RangeError(`${colourIu} IU with a standard uncertainty of ${standardIu} IU is no colour`);
    }
  }
  let last = 0;
  for (const { fromGrams, toGrams } of samples) {
    if (!(last <= fromGrams && fromGrams <= toGrams) || !Number.isFinite(toGrams)) {
      throw new RangeError(`A sample from ${fromGrams} to ${toGrams} g does not follow the one before`);
    }
    last = fromGrams;
  }
}
