import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { fitTracerTrial, stirredZonesFrom, type TrialFit } from './fit-tracer-trial.js';
import { flowByModel } from './flow-model.js';
import { exactMass } from './hopper-event.js';
import { meanShareLeft, type Residence } from './residence-time.js';
import { momentsOfStep } from './step-moments.js';
import { guessFromStep, type TracerTrial, type TrialProblem } from './tracer-trial.js';

const kilograms = (kg: number) => kg * 1000;

/** Normal numbers, the same for the same seed (a linear congruential generator, parameters from memory; twelve uniform ones). */
function normals(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  return () => Array.from({ length: 12 }, uniform).reduce((sum, value) => sum + value, -6);
}

const fourfold = (noise: () => number) => () => 4 * noise();

interface Truth {
  readonly residence: Residence;
  readonly beforeIu?: number;
  readonly afterIu?: number;
  readonly standardIu?: number;
  readonly positions?: readonly number[];
  /** What a sample is taken from. */
  readonly stretchKg?: number;
  readonly noise?: () => number;
}

const everyHundred = Array.from({ length: 20 }, (_, place) => (place + 1) * 100);

function aTrial(truth: Truth): TracerTrial {
  const { residence, beforeIu = 22, afterIu = 82, standardIu = 0.6, positions = everyHundred, noise = () => 0 } = truth;
  const measured = (colourIu: number) => ({ colourIu: Math.max(0, colourIu + standardIu * noise()), standardIu });
  const samples = positions.map((at) => {
    const stretch = { fromGrams: kilograms(at), toGrams: kilograms(at + (truth.stretchKg ?? 2)) };
    return { ...stretch, ...measured(beforeIu + (afterIu - beforeIu) * meanShareLeft(residence, stretch)) };
  });
  return { before: measured(beforeIu), after: measured(afterIu), samples };
}

const threeZones = { zoneCount: 3, holdUpGrams: kilograms(500), plugGrams: 0 };

function fitted(trial: TracerTrial): TrialFit {
  const fit = fitTracerTrial(trial);
  if (!fit.ok) throw new Error(fit.problem);
  return fit;
}
function problemOf(trial: TracerTrial): TrialProblem | null {
  const fit = fitTracerTrial(trial);
  return fit.ok ? null : fit.problem;
}

describe('a tracer trial', () => {
  it('without a wrong reading gives back what is true', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.2, max: 15, noNaN: true }),
        fc.integer({ min: 300, max: 900 }),
        (zoneCount, kg) => {
          const residence = { zoneCount, holdUpGrams: kilograms(kg), plugGrams: 0 };
          const fit = fitted(aTrial({ residence, positions: everyHundred.map((at) => (at * kg) / 500) }));
          expect(Math.abs(fit.zoneCount.value / zoneCount - 1)).toBeLessThan(1e-6);
          expect(Math.abs(fit.holdUpGrams.value / residence.holdUpGrams - 1)).toBeLessThan(1e-6);
          expect(fit.plugGrams).toBeNull();
          expect(fit.chiSquare).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 12, seed: 20261110, endOnFailure: true },
    );
  });

  it('finds a plug part where there is one', () => {
    const residence = { zoneCount: 1, holdUpGrams: kilograms(200), plugGrams: kilograms(300) };
    const positions = Array.from({ length: 40 }, (_, place) => (place + 1) * 40);
    const fit = fitted(aTrial({ residence, positions }));
    expect(fit.plugGrams?.value).toBeCloseTo(kilograms(300), -2);
    expect(fit.holdUpGrams.value).toBeCloseTo(kilograms(200), -2);
    expect(fit.zoneCount.value).toBeCloseTo(1, 3);
    expect(fit.movingGrams.value).toBeCloseTo(kilograms(500), -2);
    expect(fit.movingGrams.standard).toBeLessThan(fit.holdUpGrams.standard + (fit.plugGrams?.standard ?? 0));
  });

  it('reads composites by their mean, not by their middle', () => {
    const fit = fitted(aTrial({ residence: threeZones, stretchKg: 100 }));
    expect(fit.holdUpGrams.value).toBeCloseTo(kilograms(500), 0);
    expect(fit.zoneCount.value).toBeCloseTo(3, 5);
  });

  it('says truly how far it may be off: of 80 noisy trials about 95 in 100 hold the truth within two uncertainties', () => {
    const noise = normals(20_261_111);
    const fits = Array.from({ length: 80 }, () => fitted(aTrial({ residence: threeZones, noise })));
    const scores = {
      holdUp: fits.map(({ holdUpGrams }) => (holdUpGrams.value - kilograms(500)) / holdUpGrams.standard),
      zones: fits.map(({ zoneCount }) => (zoneCount.value - 3) / zoneCount.standard),
    };
    for (const score of Object.values(scores)) {
      const within = score.filter((distance) => Math.abs(distance) <= 2).length / score.length;
      expect(within).toBeGreaterThan(0.88);
      expect(within).toBeLessThan(0.995);
      const spread = Math.sqrt(score.reduce((sum, distance) => sum + distance ** 2, 0) / score.length);
      expect(spread).toBeGreaterThan(0.83);
      expect(spread).toBeLessThan(1.17);
    }
    expect(fits.filter(({ zones }) => zones.zoneCount === 3).length).toBeGreaterThan(73);
  });

  it('carries the doubt about both bags into the result', () => {
    const trial = aTrial({ residence: threeZones });
    const doubtful = { ...trial, before: { ...trial.before, standardIu: 2 }, after: { ...trial.after, standardIu: 2 } };
    expect(fitted(doubtful).holdUpGrams.standard).toBeGreaterThan(fitted(trial).holdUpGrams.standard);
  });

  it('makes the zones whole, with the hold-up that goes with them', () => {
    const fit = fitted(aTrial({ residence: { ...threeZones, zoneCount: 2.8 }, standardIu: 1.5 }));
    expect(fit.zones.zoneCount).toBe(3);
    expect(fit.zones.holdUpGrams).not.toBe(fit.holdUpGrams.value);
    expect(Math.abs(fit.zones.holdUpGrams / kilograms(500) - 1)).toBeLessThan(0.02);
  });

  it('allows the model of stirred zones, which carries the trial and its doubt', () => {
    const model = stirredZonesFrom('trial 7', fitted(aTrial({ residence: threeZones })));
    expect(model).toMatchObject({ kind: 'stirred-zones', origin: { trialId: 'trial 7' } });
    const events = [
      { kind: 'addition', id: 'bag', mass: exactMass(5) },
      { kind: 'exit', id: 'pack', mass: exactMass(5) },
    ] as const;
    expect(flowByModel({ capacityGrams: null, events }, model).compositionOf('pack').unexplainedGrams).toBe(0);
  });

  it.each<[TrialProblem, TracerTrial]>([
    ['too-few-samples', aTrial({ residence: threeZones, positions: everyHundred.slice(0, 7) })],
    ['colours-too-alike', aTrial({ residence: threeZones, beforeIu: 30, afterIu: 38 })],
    ['rise-not-covered', aTrial({ residence: threeZones, positions: everyHundred.map((at) => at + 600) })],
    ['rise-not-covered', aTrial({ residence: threeZones, positions: everyHundred.slice(0, 8) })],
    [
      'more-mixed-than-one-zone',
      aTrial({
        residence: { ...threeZones, zoneCount: 0.6 },
        standardIu: 0.2,
        positions: everyHundred.map((at) => 2 * at - 150),
      }),
    ],
    [
      'hardly-mixed',
      aTrial({ residence: { ...threeZones, zoneCount: 900 }, positions: everyHundred.map((at) => 390 + at / 10) }),
    ],
    ['does-not-fit', aTrial({ residence: threeZones, noise: fourfold(normals(20_261_112)) })],
  ])('is refused as %s', (problem, trial) => {
    expect(problemOf(trial)).toBe(problem);
  });

  it('refuses numbers that are no colours and samples out of order', () => {
    const trial = aTrial({ residence: threeZones });
    const { samples } = trial;
    expect(() => fitTracerTrial({ ...trial, before: { colourIu: 20, standardIu: 0 } })).toThrow(RangeError);
    expect(() => fitTracerTrial({ ...trial, after: { colourIu: -1, standardIu: 1 } })).toThrow(RangeError);
    expect(() => fitTracerTrial({ ...trial, samples: samples.toReversed() })).toThrow(RangeError);
  });
});

describe('the moments of a step', () => {
  it('need points in order that leave a spread', () => {
    expect(() => momentsOfStep([{ grams: 0, share: 0 }])).toThrow(RangeError);
    expect(() =>
      momentsOfStep([
        { grams: 5, share: 0 },
        { grams: 0, share: 1 },
      ]),
    ).toThrow(RangeError);
    expect(() =>
      momentsOfStep([
        { grams: 0, share: 1 },
        { grams: 9, share: 1 },
      ]),
    ).toThrow(RangeError);
  });
});

interface Calibration {
  readonly out_kg: readonly number[];
  readonly share_new: readonly number[];
  readonly true: { readonly M: number; readonly N: number };
  readonly trapezoid: { readonly mean_kg: number; readonly variance: number; readonly N_hat: number };
}

describeWithChecks('a trial against quality/extra_tests.json', () => {
  const calibration = () => readChecks<{ calibration_step: Calibration }>('quality/extra_tests.json').calibration_step;

  it('by trapezoids, to the last digit printed', () => {
    const { out_kg: out, share_new: shares, trapezoid } = calibration();
    const found = momentsOfStep(out.map((grams, place) => ({ grams, share: shares[place] ?? NaN })));
    expect(found.meanGrams).toBeCloseTo(trapezoid.mean_kg, 2);
    expect(found.varianceGramsSquared).toBeCloseTo(trapezoid.variance, 2);
    expect(found.zoneCount).toBeCloseTo(trapezoid.N_hat, 3);
  });

  it('by the fit comes nearer to the truth than by trapezoids, and says how near', () => {
    const { out_kg: out, share_new: shares, true: truth, trapezoid } = calibration();
    // Shares of three digits: a rounding of 0.0005 at most either way, so 0.0005/√3 of 60 IU.
    const standardIu = (60 * 0.0005) / Math.sqrt(3);
    const measured = (share: number) => ({ colourIu: 20 + 60 * share, standardIu });
    const samples = out.map((kg, place) => {
      return { fromGrams: kilograms(kg), toGrams: kilograms(kg), ...measured(shares[place] ?? NaN) };
    });
    const trial = { before: measured(0), after: measured(1), samples };
    const fit = fitted(trial);
    expect(guessFromStep(trial)?.zoneCount).toBeCloseTo(trapezoid.N_hat, 3);
    expect(Math.abs(fit.zoneCount.value - truth.N)).toBeLessThan(0.2 * Math.abs(trapezoid.N_hat - truth.N));
    expect(Math.abs(fit.zoneCount.value - truth.N)).toBeLessThan(2.5 * fit.zoneCount.standard);
    expect(Math.abs(fit.holdUpGrams.value - kilograms(truth.M))).toBeLessThan(2.5 * fit.holdUpGrams.standard);
    expect(fit.zones.zoneCount).toBe(truth.N);
  });
});
