import { languages, type Language } from '../platform/sentences/language.js';
import { ChoiceField, IdField, TextField } from '../platform/web/fields.js';
import { codeForm, codePattern } from './code-patterns.js';

export class AddCustomerForm {
  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'K-001' })
  code!: string;

  @TextField({ optional: true, most: 13, example: '9524567000019', says: 'GLN, 13 digits' })
  gln?: string | null;

  @TextField({ most: 120, example: 'Fernhill Foods' })
  name!: string;

  @TextField({ most: 400, example: '1 Example Way, Fernhill' })
  address!: string;

  @TextField({ optional: true, most: 40, example: '+49 30 000000' })
  telephone?: string | null;

  @ChoiceField(languages, { optional: true, example: 'es', says: 'Of papers for the customer; absent: as the site’s' })
  paperLanguage?: Language | null;
}

export class SetCustomerContactForm {
  @IdField()
  customerId!: string;

  @TextField({ most: 120, example: 'Fernhill Foods' })
  name!: string;

  @TextField({ most: 400, example: '1 Example Way, Fernhill' })
  address!: string;

  @TextField({ optional: true, most: 40, example: '+49 30 000000' })
  telephone?: string | null;
}

export const placeKinds = ['store', 'dock', 'line'] as const;

export class AddStorePlaceForm {
  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'LANE-1' })
  code!: string;

  @ChoiceField(placeKinds)
  kind!: string;
}
