import { ChoiceListField, DecimalField, IdField, InstantField } from '../../platform/web/fields.js';
import { judgedMarkets, type JudgedMarket } from '../run-weights/judged-markets.js';
import { CurrencyField } from './currency-field.js';

export class SetFormatSaleForm {
  @IdField({ says: 'The pack format' })
  formatId!: string;

  @ChoiceListField(judgedMarkets, { says: 'Where it is sold; the one that is shown first stands first' })
  markets!: JudgedMarket[];

  @DecimalField({ optional: true, most: '100000', example: '0.62', says: 'Absent: no money is said' })
  pricePerKilogram?: string | null;

  @CurrencyField('Of the price, three letters of ISO 4217; absent: amounts are shown without one')
  currency?: string | null;

  @InstantField({ optional: true, says: 'From when on; absent: now' })
  validFrom?: string | null;
}
