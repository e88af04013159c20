import { ChoiceField, TextField } from '../platform/web/fields.js';

/** The devices that people work on; machines are added with a token of their own. */
export const enrolledKinds = ['shared-tablet', 'handheld', 'desk'] as const;
export type EnrolledKind = (typeof enrolledKinds)[number];

const codeField = {
  most: 30,
  pattern: /^[A-Za-z0-9][A-Za-z0-9.-]{1,29}$/,
  form: 'person-code',
};

export class EnrolDeviceForm {
  @TextField({ ...codeField, example: 'tablet-line-1', says: 'What the device is called in the records' })
  code!: string;

  @ChoiceField(enrolledKinds, { says: 'Badge and PIN work on shared tablets and handhelds' })
  kind!: EnrolledKind;
}

export class AddMachineForm {
  @TextField({ ...codeField, example: 'pack-weigher-1', says: 'What the machine is called in the records' })
  code!: string;
}
