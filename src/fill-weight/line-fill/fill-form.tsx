import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { judgedMarkets } from '../run-weights/judged-markets.js';
import type { LineFillQuery } from './line-fill.query.js';

/** What the advice is reckoned with. It stands in the page's address and is kept nowhere. */
export function FillForm({ lineId, query }: { readonly lineId: string; readonly query: LineFillQuery }): VNode {
  const value = (entered: string | number | null | undefined) => (entered == null ? undefined : String(entered));
  return (
    <form class="card" method="get" action={`/lines/${lineId}/fill`}>
      <ChoiceEntry
        name="market"
        label={say('run-weights-market')}
        hint={say('line-fill-market-hint')}
        value={query.market ?? undefined}
        choices={judgedMarkets.map((market) => ({ value: market, says: say(`run-weights-market-${market}`) }))}
      />
      <NumberEntry
        name="pricePerKilogram"
        label={say('field-name-price-per-kilogram')}
        hint={say('line-fill-price-set-up-hint')}
        value={value(query.pricePerKilogram)}
      />
      <TextEntry
        name="currency"
        label={say('field-name-currency')}
        hint={say('line-fill-currency-hint')}
        isCode
        maxLength={3}
        value={value(query.currency)}
      />
      <NumberEntry
        name="tareLimitGrams"
        label={say('field-name-tare-limit-grams')}
        hint={say('line-fill-tare-hint')}
        unit="g"
        value={value(query.tareLimitGrams)}
      />
      <NumberEntry
        name="fillerStepGrams"
        label={say('field-name-filler-step-grams')}
        hint={say('line-fill-step-hint')}
        unit="g"
        value={value(query.fillerStepGrams)}
      />
      <NumberEntry
        name="setByPackCount"
        label={say('field-name-set-by-pack-count')}
        hint={say('line-fill-set-by-hint')}
        value={value(query.setByPackCount)}
      />
      <NumberEntry
        name="riskPercent"
        label={say('field-name-risk-percent')}
        hint={say('line-fill-risk-hint')}
        unit="%"
        value={value(query.riskPercent)}
      />
      <p>
        <Act says={say('line-fill-reckon')} />
      </p>
    </form>
  );
}
