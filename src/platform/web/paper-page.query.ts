import { ChoiceField } from './fields.js';

export class PaperPageQuery {
  @ChoiceField(['paper'], { optional: true, says: 'For a printer: the page in the language of the plant’s papers' })
  for?: 'paper' | null;
}
