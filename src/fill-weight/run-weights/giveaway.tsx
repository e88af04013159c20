import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import { Figures } from '../../platform/web/kit/figures.js';
import { localText } from '../../platform/web/local-text.js';
import type { SaleOfFormat } from '../format-sales/format-sales.js';
import { moneyText, priceText } from '../format-sales/money-text.js';
import { flooredMilligrams } from '../verdict-texts.js';
import { gramsText } from '../weight-text.js';
import type { Weighed } from './run-weights.js';

interface GiveawayProps {
  readonly of: Weighed;
  /** How the format was sold; null: nobody said. */
  readonly sale: SaleOfFormat | null;
  readonly timeZone: string;
}

/** Over all packs that were weighed: what short ones lack is taken off. In money where a price was set up. */
export function Giveaway({ of, sale, timeZone }: GiveawayProps): VNode {
  const { giveawayMilligrams, meanErrorMicrograms, standardDeviationMilligrams: deviation } = of;
  const price = sale?.pricePerKilogram ?? null;
  const currency = sale?.currency ?? null;
  const grams = (milligrams: number) => ({ value: gramsText(milligrams, 2), unit: 'g' });
  return (
    <>
      <Figures
        of={[
          {
            label: say('run-weights-giveaway-all'),
            value: kilogramsText(Math.round(giveawayMilligrams / 1000)),
            unit: 'kg',
          },
          ...(price === null
            ? []
            : [
                {
                  label: say('run-weights-giveaway-money'),
                  value: moneyText(worth(giveawayMilligrams, price), currency),
                },
              ]),
          { label: say('run-weights-giveaway-pack'), ...grams(flooredMilligrams(meanErrorMicrograms)) },
          ...(deviation === null ? [] : [{ label: say('run-weights-deviation'), ...grams(deviation) }]),
          { label: say('run-weights-lightest'), value: exactGrams(of.smallestMilligrams), unit: 'g' },
          { label: say('run-weights-heaviest'), value: exactGrams(of.largestMilligrams), unit: 'g' },
        ]}
      />
      <p class="quiet">
        {say(giveawayMilligrams < 0 ? 'run-weights-short-says' : 'run-weights-giveaway-says')}{' '}
        {sale === null || price === null
          ? null
          : say('run-weights-priced', {
              price: priceText(price, currency),
              since: localText(sale.validFrom, timeZone),
            })}
      </p>
    </>
  );
}

function worth(milligrams: number, pricePerKilogram: string): number {
  return (milligrams / 1e6) * Number(pricePerKilogram);
}

/** To the last digit, so that what is beyond a limit never reads as being at it. */
function exactGrams(milligrams: number): string {
  // What makes kilograms of grams makes grams of milligrams.
  return kilogramsText(milligrams);
}
