import type { VNode } from 'preact';
import type { MonthlyChange, SetpointAdvice, SetpointFacts } from '../core/setpoint/advise-setpoint.js';
import { say } from '../platform/sentences/sentences.js';
import { countText } from '../platform/web/figures-text.js';
import { Table } from '../platform/web/kit/table.js';
import { moneyText } from './format-sales/money-text.js';
import { gramsText } from './weight-text.js';

/** Advice on what to set a line to, what it rests on, and what it changes in a month. */
export interface SetpointSumFacts {
  readonly asked: SetpointFacts;
  readonly advice: SetpointAdvice;
  readonly change: MonthlyChange;
  /** A price was said; else no money is. */
  readonly isPriced: boolean;
  /** Of the price; null: nobody said. */
  readonly currency: string | null;
  /** What the table of the sum is called; absent: as on a page with one of them. */
  readonly caption?: string | undefined;
}

/** The advised setpoint as the sum that it is, the risk that it leaves, and what is not in that risk. People decide. */
export function SetpointSum({ of }: { readonly of: SetpointSumFacts }): VNode {
  const { asked, advice, caption } = of;
  return (
    <>
      <p class="sentence">
        {say('setpoint-advice', {
          setpoint: gramsText(advice.setpointMilligrams, 2),
          rule: say(`setpoint-binds-${advice.lowest.binds}`),
        })}
      </p>
      <Table
        caption={caption ?? say('setpoint-sum')}
        columns={[{ head: say('setpoint-term') }, { head: say('weights-grams'), align: 'number' }]}
        rows={advice.terms.map(({ name, milligrams }) => ({
          key: name,
          cells: [say(`setpoint-${name}`), gramsText(milligrams, 2)],
        }))}
        foot={[say('setpoint-is'), gramsText(advice.setpointMilligrams, 2)]}
      />
      <p>{riskText(asked, advice)}</p>
      <p>{say('setpoint-not-in-risk')}</p>
      <p>{changeText(of)}</p>
    </>
  );
}

function riskText({ riskPerLot }: SetpointFacts, { risk, chance }: SetpointAdvice): string {
  return say('setpoint-risk', {
    any: percentText(risk.any),
    asked: percentText(riskPerLot),
    sampling: gramsText(chance.samplingMilligrams, 2),
    drift: gramsText(chance.driftMilligrams, 2),
    together: gramsText(chance.togetherMilligrams, 2),
  });
}

function changeText({ change, isPriced, currency }: SetpointSumFacts): string {
  const { savedKilograms, savedMoney, givenAwayKilograms, givenAwayMoney } = change;
  const net = {
    away: sizeText(givenAwayKilograms),
    awayMoney: moneyText(Math.abs(givenAwayMoney), currency),
    kilograms: sizeText(savedKilograms),
    money: moneyText(Math.abs(savedMoney), currency),
  };
  const now = givenAwayKilograms < 0 ? 'short' : savedKilograms < 0 ? 'costs' : 'saves';
  return say(isPriced ? `setpoint-${now}` : `setpoint-${now}-unpriced`, net);
}

/** Without its sign: the sentence says which way. */
function sizeText(amount: number): string {
  return countText(Math.abs(Math.round(amount)));
}

/** To the tenth of a per cent, upwards: a risk is not made smaller by rounding. */
function percentText(share: number): string {
  return (Math.ceil(share * 1000 - 1e-6) / 10).toFixed(1);
}
