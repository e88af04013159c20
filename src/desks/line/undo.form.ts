import { ChoiceField, WholeField } from '../../platform/web/fields.js';

export class UndoForm {
  @WholeField({ says: 'The entry that was shown' })
  sequence!: number;

  @ChoiceField(['yes', 'no'], { says: 'Did it happen all the same: did sugar go in?' })
  happened!: 'yes' | 'no';
}
