import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { outsideText } from '../verdict-texts.js';
import type { MarketVerdict, RunWeights } from './run-weights.js';

/** A market's verdict on a run in one line. */
export function verdictSays(verdict: MarketVerdict, { weighed, weighedPackCount }: RunWeights): string {
  const place = say(`run-weights-market-${verdict.market}`);
  if (verdict.outside !== null) return say('run-weights-outside', { place, why: outsideText(verdict.outside) });
  if (weighed === null) return say('run-weights-nothing');
  const broken = verdict.ruleSets.flatMap(({ lines }) => lines.filter((line) => line.verdict === 'broken'));
  const rules = [...new Set(broken.map(({ rule }) => say(`fill-rule-${rule}`)))].join(', ');
  return say(`run-weights-${verdict.overall}`, { place, packs: countText(weighedPackCount), rules });
}
