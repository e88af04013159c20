/** Solids of a sugar solution and its density, from which its concentration follows. */
export interface SugarSolution {
  /** Refractometric dry substance, g of solids in 100 g of solution (°Brix). */
  readonly solidsPercent: number;
  /** Density of the solution at 20 °C in g/mL, from the table for that dry substance. */
  readonly densityGramsPerMillilitre: number;
}

/** The densest that a sugar solution can be; pure crystal is 1.59 g/mL (from memory). */
const mostGramsPerMillilitre = 1.6;
/**
 * Longer cells than this are not made for photometers; a length of 50 would be millimetres. Common practice, no source.
 */
const longestCellCentimetres = 20;

/**
 * The concentration of a sugar solution: grams of solids in one millilitre.
 *
 * Solids/100 × density. Equal weights of sugar and water make 0.6148 g/mL, not 0.5: half of the *mass* is sugar, and a
 * millilitre weighs 1.2296 g. Taking 0.5 puts the colour 23 % too high.
 *
 * @param solution solids above 0 and up to 100; density from 0.99 to 1.6 g/mL
 * @returns g/mL, not rounded
 * @throws RangeError outside of these ranges
 * @example sugarConcentration({ solidsPercent: 50, densityGramsPerMillilitre: 1.2296 }) // 0.6148
 */
export function sugarConcentration({ solidsPercent, densityGramsPerMillilitre }: SugarSolution): number {
  if (!(solidsPercent > 0 && solidsPercent <= 100)) {
    throw new RangeError(`Solids must be above 0 and at most 100 g/100 g, not ${solidsPercent}`);
  }
  if (!(densityGramsPerMillilitre >= 0.99 && densityGramsPerMillilitre <= mostGramsPerMillilitre)) {
    throw new RangeError(`The density must lie from 0.99 to 1.6 g/mL, not ${densityGramsPerMillilitre}`);
  }
  return (solidsPercent * densityGramsPerMillilitre) / 100;
}

/** A photometer's reading of a filtered sugar solution at 420 nm. */
export interface ColourReading {
  /** Absorbance at 420 nm against water; 0 or more. */
  readonly absorbance: number;
  /** Inside length of the cell, in centimetres (a 50 mm cell is 5). */
  readonly cellCentimetres: number;
  /** From `sugarConcentration`; grams of solids in a millilitre, not in 100 g or 100 mL. */
  readonly concentrationGramsPerMillilitre: number;
}

/**
 * The colour of sugar in solution, in ICUMSA units.
 *
 * IU = 1000 · absorbance/(cell length in cm · concentration in g/mL). A text that gives the cell in millimetres has the
 * factor 10 000 and is the same formula. The colour type of the dry crystals (Brunswick) is another quantity and so is
 * a series number on a sack. The method is part of the result: without pH adjustment (GS2/3-10, renumbered GS2-10 in
 * 2024) for white sugar up to 50 IU, at pH 7.0 (GS1-7, GS9/1/2/3-8) for the rest.
 *
 * @param reading absorbance 0 or more; cell above 0 and up to 20 cm; concentration above 0 and up to 1.6 g/mL, so that
 * a cell in millimetres or a concentration in percent is refused rather than believed
 * @returns ICUMSA units, not rounded
 * @throws RangeError outside of these ranges
 * @see ICUMSA GS2/3-10 as cited by an application sheet; South African sugar laboratory manual 7.5 for the form in
 * millimetres
 * @example solutionColourIu({ absorbance: 0.14, cellCentimetres: 5, concentrationGramsPerMillilitre: 0.6148 }) // 45.543…
 */
export function solutionColourIu(reading: ColourReading): number {
  const { absorbance, cellCentimetres, concentrationGramsPerMillilitre } = reading;
  if (!(absorbance >= 0) || !Number.isFinite(absorbance)) {
    throw new RangeError(`The absorbance must be 0 or more, not ${absorbance}`);
  }
  if (!(cellCentimetres > 0 && cellCentimetres <= longestCellCentimetres)) {
    throw new RangeError(`The cell must be above 0 and at most 20 centimetres long, not ${cellCentimetres}`);
  }
  if (!(concentrationGramsPerMillilitre > 0 && concentrationGramsPerMillilitre <= mostGramsPerMillilitre)) {
    throw new RangeError(
      `The concentration must be above 0 and at most 1.6 g/mL, not ${concentrationGramsPerMillilitre}`,
    );
  }
  return (1000 * absorbance) / (cellCentimetres * concentrationGramsPerMillilitre);
}
