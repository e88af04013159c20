import { languages, type Language } from '../platform/sentences/language.js';
import { ChoiceField } from '../platform/web/fields.js';

export class SitePaperLanguageForm {
  @ChoiceField(languages, { example: 'es' })
  paperLanguage!: Language;
}

export class CustomerPaperLanguageForm {
  @ChoiceField(languages, { optional: true, example: 'es', says: 'Absent: as the site’s papers' })
  paperLanguage?: Language | null;
}
