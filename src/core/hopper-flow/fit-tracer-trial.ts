import { incompleteGamma } from '../statistics/incomplete-gamma.js';
import { fitLeastSquares, type LeastSquaresFit } from '../statistics/least-squares.js';
import type { FlowModel } from './flow-model.js';
import { meanShareLeft } from './residence-time.js';
import { mostZones, type StirredZones } from './stirred-zones.js';
import { guessFromStep, problemBeforeFit, type TracerTrial, type TrialProblem } from './tracer-trial.js';

/** A number with its standard uncertainty, both in the same unit. */
export interface Estimate {
  readonly value: number;
  readonly standard: number;
}

/** What a trial says of a hopper. */
export interface TrialFit {
  readonly ok: true;
  /** What is stirred, in grams. */
  readonly holdUpGrams: Estimate;
  /** Among how many equal zones, with fractions. */
  readonly zoneCount: Estimate;
  /** What passed in order before them, in grams; null where the samples do not ask for any. */
  readonly plugGrams: Estimate | null;
  /**
   * All that moves, in grams: hold-up and plug. Compare it with what lay in the hopper when the second bag began to go
   * in: what is missing stands still at the walls.
   */
  readonly movingGrams: Estimate;
  /** Of hold-up and number of zones, −1 to 1. */
  readonly correlation: number;
  /** The zones of the flow model: whole, with the hold-up that fits that number best. */
  readonly zones: StirredZones;
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
}

export interface TrialRefused {
  readonly ok: false;
  readonly problem: TrialProblem;
}

/** A plug part is looked for where a fit without one lies farther off than chance allows in one of twenty trials … */
const poorChance = 0.05;
/** … and taken up where it makes chi-square smaller by more than this: by chance in one of a hundred. Own choices. */
const plugPays = 6.63;
/** The chance that a trial with true uncertainties lies farther off. Own choice, no source. */
const leastChance = 0.001;

/**
 * Fits hold-up and number of stirred zones to a tracer trial, and a plug part where the samples ask for one.
 *
 * Colour of a sample = before + (after − before)·F, F averaged over the packs that it was taken from. Both bags' colours
 * are fitted along with the rest, each held by its own result, so their doubt is in the uncertainties; the positions are
 * taken as exact. Standard uncertainties are those of a linear model about the best fit (GUM, JCGM 100:2008).
 *
 * @returns the fit, or why the trial says nothing; without a fit the model can't be chosen
 * @throws RangeError on numbers that are no colours, uncertainties or grams in order
 * @see quality.md 4.3 (calibration from a step), `checks/quality/extra_tests.json`
 * @example fitTracerTrial(trial) // { ok: true, holdUpGrams: { value: 499_8…, standard: 4_… }, zoneCount: { value: 3.0… } … }
 */
export function fitTracerTrial(trial: TracerTrial): TrialFit | TrialRefused {
  const problem = problemBeforeFit(trial);
  if (problem !== null) return { ok: false, problem };
  const guess = guessFromStep(trial);
  const fit = guess === null ? null : fitWithOrWithoutPlug(trial, guess);
  if (fit === null) return { ok: false, problem: 'does-not-settle' };
  const { zoneCount } = fit;
  if (zoneCount.value + 2 * zoneCount.standard < 1) return { ok: false, problem: 'more-mixed-than-one-zone' };
  if (zoneCount.value > mostZones) return { ok: false, problem: 'hardly-mixed' };
  if (chanceOf(fit.chiSquare, fit.degreesOfFreedom) < leastChance) return { ok: false, problem: 'does-not-fit' };
  const zones = wholeZones(trial, fit);
  return zones === null ? { ok: false, problem: 'does-not-settle' } : { ok: true, ...fit, zones };
}

/**
 * The flow model that a trial allows.
 * @param trialId names the trial's record
 * @example stirredZonesFrom('trial 7', fit) // { kind: 'stirred-zones', zones: { … }, origin: { trialId: 'trial 7', … } }
 */
export function stirredZonesFrom(trialId: string, fit: TrialFit): FlowModel {
  const origin = {
    trialId,
    holdUpStandardGrams: fit.holdUpGrams.standard,
    zoneCountStandard: fit.zoneCount.standard,
  };
  return { kind: 'stirred-zones', zones: fit.zones, origin };
}

interface Shape {
  readonly zoneCount: number;
  readonly holdUpGrams: number;
  readonly plugGrams: number;
}
type ShapeFit = Omit<TrialFit, 'ok' | 'zones'>;

function fitWithOrWithoutPlug(trial: TracerTrial, guess: { meanGrams: number; zoneCount: number }): ShapeFit | null {
  const { meanGrams, zoneCount } = guess;
  const fitFrom = (start: Shape, hasPlug: boolean) => {
    const logs = [Math.log(start.holdUpGrams), Math.log(start.zoneCount)];
    return fitColours(trial, hasPlug ? [...logs, Math.log(start.plugGrams)] : logs, ([holdUp = 0, zones = 0, plug]) => {
      const plugGrams = plug === undefined ? 0 : Math.exp(plug);
      return { holdUpGrams: Math.exp(holdUp), zoneCount: Math.exp(zones), plugGrams };
    });
  };
  const without = fitFrom({ holdUpGrams: meanGrams, zoneCount, plugGrams: 0 }, false);
  if (without !== null && chanceOf(without.sumOfSquares, without.degreesOfFreedom) > poorChance) {
    return describeFit(without);
  }
  // The spread is the stirred part's alone, so a plug part of some size fixes the number of zones to start from.
  const starts = [0.3, 0.7].map((share): Shape => {
    return {
      holdUpGrams: meanGrams * (1 - share),
      zoneCount: Math.max(1, zoneCount * (1 - share) ** 2),
      plugGrams: meanGrams * share,
    };
  });
  const withPlug = best(starts.map((start) => fitFrom(start, true)));
  const pays = withPlug !== null && withPlug.sumOfSquares < (without?.sumOfSquares ?? Infinity) - plugPays;
  const chosen = pays ? withPlug : without;
  return chosen === null ? null : describeFit(chosen);
}

/** The number of zones made whole, each of both neighbours with its own best hold-up. */
function wholeZones(trial: TracerTrial, { holdUpGrams, zoneCount, plugGrams }: ShapeFit): StirredZones | null {
  const neighbours = new Set(
    [Math.floor(zoneCount.value), Math.ceil(zoneCount.value)].map((count) => Math.max(1, count)),
  );
  const fits = [...neighbours].map((count) => {
    const start = [Math.log(holdUpGrams.value), ...(plugGrams === null ? [] : [Math.log(plugGrams.value)])];
    const fit = fitColours(trial, start, ([holdUp = 0, plug]) => {
      const plugInGrams = plug === undefined ? 0 : Math.exp(plug);
      return { holdUpGrams: Math.exp(holdUp), zoneCount: count, plugGrams: plugInGrams };
    });
    return fit === null ? null : { ...fit, count };
  });
  const chosen = best(fits);
  return chosen === null ? null : { zoneCount: chosen.count, holdUpGrams: Math.exp(chosen.parameters[0] ?? 0) };
}

/** The shape's own parameters come first, both bags' colours last. */
function fitColours(
  trial: TracerTrial,
  start: readonly number[],
  shapeOf: (parameters: readonly number[]) => Shape,
): LeastSquaresFit | null {
  const { before, after, samples } = trial;
  const bags = [before, after];
  const hasPlug = shapeOf(start).plugGrams > 0;
  let known: { readonly of: readonly number[]; readonly shares: readonly number[] } = { of: [], shares: [] };
  // A change of a bag's colour alone leaves the shares as they are.
  const sharesAt = (own: readonly number[]): readonly number[] => {
    if (known.of.length === own.length && own.every((value, place) => value === known.of[place])) return known.shares;
    const shape = shapeOf(own);
    // Not a number is worse than any sum, so the fit turns back.
    const shares = samples.map((sample) => (isThinkable(shape, hasPlug) ? meanShareLeft(shape, sample) : NaN));
    known = { of: own, shares };
    return shares;
  };
  const residualsAt = (parameters: readonly number[]): readonly number[] => {
    const shares = sharesAt(parameters.slice(0, start.length));
    const colours = parameters.slice(start.length);
    const [old = 0, fresh = 0] = colours;
    const ofBags = bags.map(({ colourIu, standardIu }, bag) => (colourIu - (colours[bag] ?? 0)) / standardIu);
    const ofSamples = samples.map(({ colourIu, standardIu }, place) => {
      return (colourIu - old - (fresh - old) * (shares[place] ?? NaN)) / standardIu;
    });
    return [...ofBags, ...ofSamples];
  };
  return fitLeastSquares({
    start: [...start, ...bags.map(({ colourIu }) => colourIu)],
    scales: [...start.map(() => 1), ...bags.map(({ standardIu }) => standardIu)],
    residualsAt,
  });
}

/** A plug part of next to nothing is none, and the fit with one need not go on looking. */
function isThinkable({ zoneCount, holdUpGrams, plugGrams }: Shape, hasPlug: boolean): boolean {
  if (!(zoneCount > 0.01 && zoneCount < 10 * mostZones && holdUpGrams > 1e-3)) return false;
  return Number.isFinite(holdUpGrams + plugGrams) && (!hasPlug || plugGrams > 0.001 * holdUpGrams);
}

function describeFit({ parameters, covariance, sumOfSquares, degreesOfFreedom }: LeastSquaresFit): ShapeFit {
  const [holdUp = 0, zones = 0] = parameters;
  const hasPlug = parameters.length > 4;
  const at = (row: number, column: number) => covariance[row]?.[column] ?? 0;
  // A logarithm's standard uncertainty is the relative one.
  const estimate = (place: number): Estimate => {
    const value = Math.exp(parameters[place] ?? 0);
    return { value, standard: value * Math.sqrt(at(place, place)) };
  };
  const [stirred, plug] = [Math.exp(holdUp), hasPlug ? Math.exp(parameters[2] ?? 0) : 0];
  const moving = stirred ** 2 * at(0, 0) + (hasPlug ? 2 * stirred * plug * at(0, 2) + plug ** 2 * at(2, 2) : 0);
  return {
    holdUpGrams: estimate(0),
    zoneCount: { value: Math.exp(zones), standard: estimate(1).standard },
    plugGrams: hasPlug ? estimate(2) : null,
    movingGrams: { value: stirred + plug, standard: Math.sqrt(moving) },
    correlation: at(0, 1) / Math.sqrt(at(0, 0) * at(1, 1)),
    chiSquare: sumOfSquares,
    degreesOfFreedom,
  };
}

/** The chance that a trial with true uncertainties lies as far off or farther (chi-square). */
function chanceOf(chiSquare: number, degreesOfFreedom: number): number {
  return incompleteGamma(degreesOfFreedom / 2, chiSquare / 2).upper;
}

function best<Fit extends LeastSquaresFit>(fits: readonly (Fit | null)[]): Fit | null {
  return fits.reduce((chosen, fit) => {
    return fit !== null && (chosen === null || fit.sumOfSquares < chosen.sumOfSquares) ? fit : chosen;
  }, null);
}
