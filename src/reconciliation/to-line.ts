import type { AccountWeight } from '../core/mass-balance/account.js';
import type { Uncertainty } from '../core/mass-balance/uncertainty.js';
import type { AccountLine } from './account-view.js';

/** A line as it is read, before its uncertainty is written in whole numbers. */
export interface LineDraft extends Omit<AccountLine, 'standardMilligrams' | 'sharedBy' | 'sharedStandardMilligrams'> {
  readonly uncertainty: Uncertainty;
}

/** A line in whole numbers. What is computed from it again is computed from these, so that it comes out the same. */
export function toLine({ uncertainty, ...line }: LineDraft): AccountLine {
  return {
    ...line,
    standardMilligrams: Math.round(uncertainty.standardGrams * 1000),
    sharedBy: uncertainty.sharedBy,
    sharedStandardMilligrams: Math.round(uncertainty.sharedStandardGrams * 1000),
  };
}

/** A line as the balance takes it. */
export function weightOfLine(line: AccountLine): AccountWeight {
  const { recordId, grams, basis, sharedBy } = line;
  const standardGrams = line.standardMilligrams / 1000;
  const sharedStandardGrams = line.sharedStandardMilligrams / 1000;
  return { recordId, grams, basis, uncertainty: { standardGrams, sharedBy, sharedStandardGrams } };
}
