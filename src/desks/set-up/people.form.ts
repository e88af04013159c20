import { personRoles } from '../../people/person.form.js';
import type { Role } from '../../platform/actor.js';
import { languages } from '../../platform/sentences/language.js';
import { ChoiceField, TextField } from '../../platform/web/fields.js';

export class AdmitStepForm {
  @TextField({ most: 100 })
  name!: string;

  @ChoiceField(personRoles)
  role!: Role;

  @ChoiceField(languages, { optional: true })
  language?: string | null;

  @TextField({
    optional: true,
    most: 30,
    pattern: /^[A-Za-z0-9][A-Za-z0-9.-]{1,29}$/,
    form: 'person-code',
  })
  personCode?: string | null;
}

/** A form that asks for nothing but to be sent. */
export class NothingForm {
  @TextField({ optional: true, most: 1 })
  nothing?: string | null;
}
