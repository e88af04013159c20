import { languages, type Language } from '../platform/sentences/language.js';
import { ChoiceField, IdField, TextField } from '../platform/web/fields.js';

/** How somebody proves who they are: code and password, a badge, or the person chosen from a list and the PIN. */
export class SignInForm {
  @ChoiceField(['password', 'badge', 'pin'], { says: 'badge and pin only on an enrolled tablet or handheld' })
  proof!: 'password' | 'badge' | 'pin';

  @TextField({ optional: true, most: 60, example: 'jmoor', says: 'With a password: the person’s code' })
  code?: string | null;

  @TextField({ optional: true, most: 200, says: 'With a password' })
  password?: string | null;

  @IdField({ optional: true, says: 'With a PIN: the person' })
  person?: string | null;

  @TextField({ optional: true, most: 60, says: 'With a PIN: 4 to 8 digits' })
  pin?: string | null;

  @TextField({ optional: true, most: 60, says: 'With a badge: what was scanned' })
  badge?: string | null;
}

export class ChangePasswordForm {
  @TextField({ most: 200, says: 'The password so far' })
  oldPassword!: string;

  @TextField({ most: 200, says: 'At least 10 characters, without the person’s code' })
  newPassword!: string;
}

export class SetPinForm {
  @TextField({ most: 200, says: 'The password: whoever sets a PIN shows that they are the person' })
  password!: string;

  @TextField({ most: 8, pattern: /^\d{4,8}$/, form: 'pin', example: '4093', says: 'The new PIN' })
  pin!: string;
}

export class OwnLanguageForm {
  @ChoiceField(languages, { example: 'es' })
  language!: Language;
}
