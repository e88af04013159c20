import { ChoiceField, DecimalField, WholeField } from '../../platform/web/fields.js';
import { CurrencyField } from '../format-sales/currency-field.js';
import { judgedMarkets, type JudgedMarket } from '../run-weights/judged-markets.js';

/** What advice on a line's setpoint is to be reckoned with; nothing of it is kept. */
export class LineFillQuery {
  @ChoiceField(judgedMarkets, { optional: true, says: 'Where the packs are sold; absent: as set up for each format' })
  market?: JudgedMarket | null;

  @DecimalField({ optional: true, most: '100000', example: '0.62', says: 'Absent: as set up for each format' })
  pricePerKilogram?: string | null;

  @CurrencyField('Of the price that is asked with, three letters of ISO 4217; absent: amounts have none')
  currency?: string | null;

  @DecimalField({
    ...{ optional: true, most: '1000', example: '0.3' },
    says: 'By how much the tare may be heavier than taken; absent: 0',
  })
  tareLimitGrams?: string | null;

  @DecimalField({
    ...{ optional: true, least: '0.001', most: '1000', example: '0.5' },
    says: 'The smallest adjustment of the filler; absent: a step of the weigher’s display',
  })
  fillerStepGrams?: string | null;

  @WholeField({
    ...{ optional: true, least: 1, most: 100_000, example: 50 },
    says: 'How many packs are weighed each time the line is set; absent: every pack',
  })
  setByPackCount?: number | null;

  @DecimalField({
    ...{ optional: true, least: '0.1', most: '50', example: '5' },
    says: 'In so many of a hundred lots chance may break a rule; absent: 5',
  })
  riskPercent?: string | null;
}
