/** Codes of things are spoken and typed: capital letters, digits, hyphens. */
export const codePattern = /^[A-Z0-9][A-Z0-9-]{0,19}$/;
export const codeForm = 'capital letters, digits and hyphens, 20 at most';

/** Codes of lines and shifts are printed on packs, so they are short. */
export const printedPattern = /^[A-Z0-9]{1,4}$/;
export const printedForm = 'one to four capital letters or digits';
