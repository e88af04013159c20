import type { TrialFit, TrialRefused } from '../core/hopper-flow/fit-tracer-trial.js';
import { say } from '../platform/sentences/sentences.js';
import type { ModelRow } from './flow-models.js';
import { mass } from './level-text.js';

type ModelNumbers = Pick<ModelRow, 'kind' | 'zoneCount' | 'zoneCountStandard' | 'holdUpGrams' | 'holdUpStandardGrams'>;

/** A model with its numbers: `3 stirred zones that hold 512 kg (± 6 kg; ± 0.1 zones)`. */
export function modelText(model: ModelNumbers | null): string {
  if (model === null) return say('flow-first-in-first-out');
  const { kind, zoneCount, zoneCountStandard, holdUpGrams, holdUpStandardGrams } = model;
  if (kind !== 'stirred-zones') return say(`flow-${kind}`);
  return say('flow-zones-text', {
    zones: zoneCount,
    holdUp: kilograms(holdUpGrams ?? 0),
    holdUpStandard: kilograms(holdUpStandardGrams ?? 0),
    zonesStandard: Number(zoneCountStandard).toFixed(2),
  });
}

/** What a trial says of its hopper, in one sentence. */
export function fitText(fit: TrialFit | TrialRefused): string {
  if (!fit.ok) return say(`trial-${fit.problem}`);
  const { zones, zoneCount, holdUpGrams, plugGrams } = fit;
  return say(plugGrams === null ? 'trial-fit-text' : 'trial-fit-plug-text', {
    zones: zones.zoneCount,
    count: zoneCount.value.toFixed(2),
    countStandard: zoneCount.standard.toFixed(2),
    holdUp: kilograms(holdUpGrams.value),
    holdUpStandard: kilograms(holdUpGrams.standard),
    plug: kilograms(plugGrams?.value ?? 0),
    plugStandard: kilograms(plugGrams?.standard ?? 0),
  });
}

/** To the tenth of a kilogram: a trial knows no better. */
export function kilograms(grams: number): string {
  return mass(Math.round(grams / 100) * 100);
}
