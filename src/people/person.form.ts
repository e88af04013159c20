import { roles, type Role } from '../platform/actor.js';
import { languages } from '../platform/sentences/language.js';
import { ChoiceField, IdField, TextField } from '../platform/web/fields.js';

/** The roles that people hold; `device` is for machines. */
export const personRoles = roles.filter((role) => role !== 'device');

/** A code as it may be given: what a person types to sign in. */
const codePattern = /^[A-Za-z0-9][A-Za-z0-9.-]{1,29}$/;

export class AddPersonForm {
  @TextField({
    most: 30,
    pattern: codePattern,
    form: 'person-code',
    example: 'jmoor',
    says: 'What the person types to sign in; capitals do not matter',
  })
  code!: string;

  @TextField({ most: 100, example: 'Jo Moor', says: 'The name, kept apart from all records' })
  name!: string;

  @ChoiceField(languages, { optional: true })
  language?: string | null;
}

export class AdmitPersonForm {
  @TextField({ most: 100, example: 'Jo Moor', says: 'The name, kept apart from all records' })
  name!: string;

  @TextField({
    optional: true,
    most: 30,
    pattern: codePattern,
    form: 'person-code',
    example: 'jmoor',
    says: 'What the person types to sign in; made from the name where absent',
  })
  code?: string | null;

  @ChoiceField(personRoles, { says: 'What the person is here to do' })
  role!: Role;

  @ChoiceField(languages, { optional: true })
  language?: string | null;
}

export class RenamePersonForm {
  @TextField({ most: 100, example: 'Jo Moor' })
  name!: string;

  @ChoiceField(languages, { optional: true })
  language?: string | null;
}

export class RoleForm {
  @ChoiceField(personRoles, { says: 'What the person is here to do' })
  role!: Role;
}

/** A role of a person, named in the address. */
export class RolePath {
  @IdField()
  id!: string;

  @ChoiceField(personRoles)
  role!: Role;
}
