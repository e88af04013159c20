import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { solutionColourIu, sugarConcentration } from './colour.js';

interface ColourExample {
  readonly A: number;
  readonly cell_cm: number;
  readonly brix: number;
  readonly rho: number;
  readonly c: number;
  readonly IU: number;
  readonly wrong_c_is_0p5?: number;
}

describe('the concentration of a sugar solution', () => {
  it('of equal weights of sugar and water is 0.6148 g/mL', () => {
    expect(sugarConcentration({ solidsPercent: 50, densityGramsPerMillilitre: 1.2296 })).toBeCloseTo(0.6148, 12);
  });

  it.each([
    [0, 1.2296],
    [101, 1.2296],
    [50, 0.98],
    [50, 1229.6],
    [NaN, 1.2296],
    [50, NaN],
  ])('does not come out of %d %% solids at %d g/mL', (solidsPercent, densityGramsPerMillilitre) => {
    expect(() => sugarConcentration({ solidsPercent, densityGramsPerMillilitre })).toThrow(RangeError);
  });
});

describe('the colour in solution', () => {
  const reading = { absorbance: 0.14, cellCentimetres: 5, concentrationGramsPerMillilitre: 0.6148 };

  it('is a thousand times absorbance over cell length and concentration', () => {
    expect(solutionColourIu(reading)).toBeCloseTo(45.5433, 4);
    expect(solutionColourIu({ ...reading, absorbance: 0 })).toBe(0);
  });

  it('does not depend on the cell, because the absorbance grows with it', () => {
    const longer = solutionColourIu({ ...reading, absorbance: 0.28, cellCentimetres: 10 });
    expect(longer).toBeCloseTo(solutionColourIu(reading), 10);
  });

  it.each([
    ['a cell in millimetres', { cellCentimetres: 50 }],
    ['no cell', { cellCentimetres: 0 }],
    ['a concentration in percent', { concentrationGramsPerMillilitre: 50 }],
    ['no sugar', { concentrationGramsPerMillilitre: 0 }],
    ['an absorbance below that of water', { absorbance: -0.01 }],
    ['no absorbance', { absorbance: NaN }],
  ])('refuses %s', (_what, wrong) => {
    expect(() => solutionColourIu({ ...reading, ...wrong })).toThrow(RangeError);
  });
});

describeWithChecks('the colour in solution against worked examples', () => {
  const examples = () => readChecks<{ colour: readonly ColourExample[] }>('quality/lab_examples.json').colour;

  it('agrees to a hundredth of a unit', () => {
    expect(examples().length).toBeGreaterThan(0);
    for (const { A, cell_cm, brix, rho, c, IU } of examples()) {
      const concentration = sugarConcentration({ solidsPercent: brix, densityGramsPerMillilitre: rho });
      expect(concentration).toBeCloseTo(c, 5);
      const colour = solutionColourIu({
        absorbance: A,
        cellCentimetres: cell_cm,
        concentrationGramsPerMillilitre: concentration,
      });
      expect(colour).toBeCloseTo(IU, 2);
    }
  });

  it('is some 23 % too high where the share of sugar is taken for its concentration', () => {
    for (const { A, cell_cm, IU, wrong_c_is_0p5: wrong } of examples().filter(
      (one) => one.wrong_c_is_0p5 !== undefined,
    )) {
      const colour = solutionColourIu({
        absorbance: A,
        cellCentimetres: cell_cm,
        concentrationGramsPerMillilitre: 0.5,
      });
      expect(colour).toBeCloseTo(wrong ?? NaN, 2);
      expect(Math.round((colour / IU - 1) * 100)).toBe(23);
    }
  });
});
