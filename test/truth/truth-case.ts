import { recordPlant, startId, type Fault, type RecordedPeriod } from './recorded-period.js';
import { targetsOf, type TruthTarget } from './truth-targets.js';
import { earlierSugar, truePlant, type TruePlant } from './true-plant.js';

/** A plant as it truly was, its records with some faults, and what is asked of them. */
export interface TruthCase {
  readonly plant: TruePlant;
  readonly recorded: readonly RecordedPeriod[];
  readonly targets: readonly TruthTarget[];
  /** True grams of each bag; what the hopper held before the first counts as one. */
  readonly bagGrams: ReadonlyMap<string, number>;
}

export function truthCase(seed: number, faults: ReadonlySet<Fault>): TruthCase {
  const plant = truePlant(seed, faults.has('residues'));
  const recorded = recordPlant(plant, faults);
  const tips = plant.periods.flatMap((period) => period.tips);
  const bagGrams = new Map(tips.map(({ bag, grams }) => [bag, grams]));
  const { startGrams = 0 } = plant.periods[0] ?? {};
  if (startGrams > 0) bagGrams.set(earlierSugar, startGrams);
  return { plant, recorded, targets: targetsOf(plant, recorded, faults), bagGrams };
}

/** Sugar from before the first period is what that starts with. */
export const idIn = (bag: string, periodPlace: number): string =>
  periodPlace === 0 && bag === earlierSugar ? startId : bag;

export const bagOf = (additionId: string): string => (additionId === startId ? earlierSugar : additionId);
