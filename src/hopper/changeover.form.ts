import { ChoiceField, IdField, TextField, WholeField } from '../platform/web/fields.js';
import { changeoverRungs, type RungWord } from './changeover-rungs.js';

export class OpenChangeoverForm {
  @IdField({ says: 'Id of the packing line' })
  lineId!: string;

  @IdField({ says: 'Id of the pack format that comes next' })
  formatId!: string;
}

export class DoRungForm {
  @ChoiceField(changeoverRungs, { says: 'Which rung; only the next one is taken' })
  rung!: RungWord;

  @WholeField({ optional: true, most: 100_000, example: 2, says: 'film-back: rolls and label rolls that went back' })
  count?: number | null;

  @TextField({ optional: true, most: 40, example: 'RB-2026-000007', says: 'reject-bin-closed: the number of its bin' })
  bin?: string | null;

  @TextField({ optional: true, most: 200, example: 'The bin was empty', says: 'What was seen' })
  note?: string | null;

  @IdField({ optional: true, says: 'code-checked: who read the code with you' })
  secondPersonId?: string | null;
}

export class DropChangeoverForm {
  @TextField({
    most: 300,
    example: 'The plan was changed: the same format goes on',
    says: 'Why it does not take place',
  })
  reason!: string;
}
