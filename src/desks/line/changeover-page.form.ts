import { changeoverRungs, type RungWord } from '../../hopper/changeover-rungs.js';
import { ChoiceField, IdField, TextField, WholeField } from '../../platform/web/fields.js';

export class ChangeoverStartForm {
  @IdField({ says: 'The format that comes next' })
  formatId!: string;
}

export class RungForm {
  @ChoiceField(changeoverRungs)
  rung!: RungWord;

  @WholeField({ optional: true, most: 100_000 })
  count?: number | null;

  @TextField({ optional: true, most: 40 })
  bin?: string | null;

  @TextField({ optional: true, most: 200 })
  note?: string | null;

  @TextField({ optional: true, most: 60 })
  badge?: string | null;

  @TextField({ optional: true, most: 60 })
  person?: string | null;

  @TextField({ optional: true, most: 60 })
  pin?: string | null;

  @TextField({ optional: true, most: 60 })
  code?: string | null;

  @TextField({ optional: true, most: 200 })
  password?: string | null;
}
