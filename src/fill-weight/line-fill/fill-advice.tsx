import type { VNode } from 'preact';
import { ruleSetOf } from '../../core/average-quantity/rule-sets.js';
import { say } from '../../platform/sentences/sentences.js';
import { marketsText } from '../format-sales/sale-texts.js';
import { SetpointSum } from '../setpoint-sum.js';
import { outsideText } from '../verdict-texts.js';
import { gramsText } from '../weight-text.js';
import type { AdviceOnFormat, AdvisedFill, NoAdvice } from './advise-fill.js';
import { leastLots, leastPacksOfLot } from './fill-lot.js';
import type { FormatFill } from './line-fill.js';

/** What to set the line to for a format, with its sum; or what is missing. */
export function FillAdvice({
  of: { fill, markets, known, variation, advised, missing },
}: {
  readonly of: AdviceOnFormat;
}): VNode {
  if (advised === null) return <p class="sentence">{missing === null ? null : missingText(missing)}</p>;
  return (
    <>
      <SetpointSum of={{ ...advised, caption: say('line-fill-sum', { format: fill.formatName }) }} />
      <p>
        {say('line-fill-by-rules', {
          place: marketsText(markets.filter((market) => !advised.leftOutMarkets.includes(market))),
          law: ruleSetOf(advised.ruleSet).title,
        })}{' '}
        {advised.leftOutMarkets.length === 0
          ? null
          : `${say('line-fill-markets-left-out', { markets: marketsText(advised.leftOutMarkets) })} `}
        {scaleText(fill, advised)}{' '}
        {variation?.driftFrom === 'settings'
          ? say('line-fill-drift-by-settings', { lots: known.knownLotCount })
          : say('line-fill-drift-says')}
      </p>
    </>
  );
}

function scaleText({ weighers }: FormatFill, { asked }: AdvisedFill): string {
  const { scaleLimitMilligrams, tareLimitMilligrams, stepMilligrams } = asked;
  const scale = say('line-fill-scale', {
    weighers: weighers.map(({ code }) => code).join(', '),
    grams: gramsText(scaleLimitMilligrams, 2),
    step: gramsText(stepMilligrams, 2),
  });
  return tareLimitMilligrams === 0 ? `${scale} ${say('line-fill-no-tare')}` : scale;
}

/** Why nothing is advised, and what to do about it. */
function missingText(missing: NoAdvice): string {
  switch (missing.why) {
    case 'nothing-weighed':
      return say('line-fill-nothing-weighed');
    case 'few-lots':
      return say('line-fill-few-lots', {
        ...{ count: missing.missingCount, used: missing.usedCount },
        ...{ least: leastLots, packs: leastPacksOfLot },
      });
    case 'outside':
      return say('line-fill-outside', { why: outsideText(missing.outside) });
    case 'other-rules':
      return say('line-fill-other-rules', { law: ruleSetOf(missing.ruleSet).title });
    case 'no-spread':
      return say('line-fill-no-spread');
  }
}
