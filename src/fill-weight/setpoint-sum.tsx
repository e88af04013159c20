import type { VNode } from 'preact';
import type { MonthlyChange, SetpointAdvice, SetpointFacts } from '../core/setpoint/advise-setpoint.js';
import { say } from '../platform/sentences/sentences.js';
import { countText } from '../platform/web/figures-text.js';
import { Table } from '../platform/web/kit/table.js';
import { gramsText } from './weight-text.js';

/** Advice on what to set a line to, what it rests on, and what it changes in a month. */
export interface SetpointSumFacts {
  readonly asked: SetpointFacts;
  readonly advice: SetpointAdvice;
  readonly change: MonthlyChange;
}

/** The advised setpoint as the sum that it is, the risk that it leaves, and what is not in that risk. People decide. */
export function SetpointSum({ of: { asked, advice, change } }: { readonly of: SetpointSumFacts }): VNode {
  return (
    <>
      <p class="sentence">
        {say('setpoint-advice', {
          setpoint: gramsText(advice.setpointMilligrams, 2),
          rule: say(`setpoint-binds-${advice.lowest.binds}`),
        })}
      </p>
      <Table
        caption={say('setpoint-sum')}
        columns={[{ head: say('setpoint-term') }, { head: say('weights-grams'), align: 'number' }]}
        rows={advice.terms.map(({ name, milligrams }) => ({
          key: name,
          cells: [say(`setpoint-${name}`), gramsText(milligrams, 2)],
        }))}
        foot={[say('setpoint-is'), gramsText(advice.setpointMilligrams, 2)]}
      />
      <p>{riskText(asked, advice)}</p>
      <p>{say('setpoint-not-in-risk')}</p>
      <p>{changeText(change)}</p>
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

function changeText({ savedKilograms, savedMoney, givenAwayKilograms, givenAwayMoney }: MonthlyChange): string {
  const net = {
    away: countText(Math.round(givenAwayKilograms)),
    awayMoney: countText(Math.round(givenAwayMoney)),
    kilograms: countText(Math.abs(Math.round(savedKilograms))),
    money: countText(Math.abs(Math.round(savedMoney))),
  };
  return savedKilograms < 0 ? say('setpoint-costs', net) : say('setpoint-saves', net);
}

/** To the tenth of a per cent, upwards: a risk is not made smaller by rounding. */
function percentText(share: number): string {
  return (Math.ceil(share * 1000 - 1e-6) / 10).toFixed(1);
}
