import { weigherForPack, type ScaleDemand, type ScaleFitness } from '../../core/average-quantity/scale-for-pack.js';
import { say } from '../../platform/sentences/sentences.js';
import type { PackWeigherRow } from '../pack-weighers.js';
import { gramsText } from '../weight-text.js';

/** Beyond this no table of any law here says how short a pack may be. */
const largestMilligrams = 50_000_000;
const demands = ['directive', 'oiml-r87', 'handbook-133'] as const satisfies readonly ScaleDemand[];

/** What a weigher is by its records, and whether that is good enough for such packs by each law. */
export function fitnessTexts(weigher: PackWeigherRow, nominalMilligrams: number): readonly string[] {
  const { code, stepMilligrams, maximumPermissibleErrorMilligrams: error } = weigher;
  const known = say('weight-report-scale-says', {
    code,
    step: gramsText(stepMilligrams, 2),
    error: gramsText(error, 2),
  });
  if (nominalMilligrams > largestMilligrams) return [known];
  const asked = { errorMilligrams: error, intervalMilligrams: stepMilligrams };
  return [known, ...demands.map((demand) => fitnessText(demand, weigherForPack(demand, asked, nominalMilligrams)))];
}

function fitnessText(demand: ScaleDemand, fitness: ScaleFitness): string {
  if (fitness.verdict === 'cannot-weigh-it') return say('weight-report-scale-cannot');
  const text = say(`weight-report-scale-${fitness.verdict}`, {
    law: say(`weight-report-law-${demand}`),
    found: gramsText(fitness.errorMilligrams, 2),
    allowed: gramsText(fitness.allowedMilligrams, 2),
    clause: fitness.clause,
  });
  return fitness.evidence === 'seen' ? text : `${text} ${say(`fill-evidence-${fitness.evidence}`)}`;
}
