import { gs1CheckDigit, hasGs1CheckDigit } from './check-digit.js';

/** What an SSCC is made of. */
export interface SsccParts {
  /** The GS1 company prefix, 4 to 12 digits. */
  readonly companyPrefix: string;
  /** 0 to 9, free to use; it multiplies the numbers at hand by ten. */
  readonly extensionDigit: number;
  /** The running number of the unit, from 0; never given out twice. */
  readonly serial: number;
}

/**
 * The number of a logistic unit (bulk bag, pallet): extension digit, company prefix, serial filled up with zeros, check digit; 18 digits.
 *
 * An SSCC stays with its unit for life. GS1 allows another use a year after the unit was shipped; here none is ever used again.
 *
 * @throws RangeError where the prefix is not 4 to 12 digits, the extension digit is not 0 to 9, or the serial is not a whole number from 0
 * to `ssccCapacity(companyPrefix) - 1`: then a new extension digit is due.
 * @example
 * makeSscc({ companyPrefix: '9520123', extensionDigit: 0, serial: 1 }) // '095201230000000011'
 */
export function makeSscc({ companyPrefix, extensionDigit, serial }: SsccParts): string {
  const capacity = ssccCapacity(companyPrefix);
  if (!Number.isInteger(extensionDigit) || extensionDigit < 0 || extensionDigit > 9) {
    throw new RangeError(`extension digit not 0 to 9: ${extensionDigit}`);
  }
  if (!Number.isInteger(serial) || serial < 0 || serial >= capacity) {
    throw new RangeError(
      `serial not from 0 to ${capacity - 1}, the last that prefix ${companyPrefix} leaves room for: ${serial}`,
    );
  }
  const digits = `${extensionDigit}${companyPrefix}${String(serial).padStart(16 - companyPrefix.length, '0')}`;
  return digits + gs1CheckDigit(digits);
}

/**
 * How many SSCCs one extension digit gives with this company prefix: ten to the power of 16 minus the digits of the prefix.
 *
 * @throws RangeError where the prefix is not 4 to 12 digits.
 * @example
 * ssccCapacity('9520123') // 1_000_000_000
 */
export function ssccCapacity(companyPrefix: string): number {
  if (!isCompanyPrefix(companyPrefix)) throw new RangeError(`company prefix not 4 to 12 digits: "${companyPrefix}"`);
  return 10 ** (16 - companyPrefix.length);
}

/**
 * Whether a text is an SSCC: exactly 18 digits, the last of them the check digit.
 *
 * @example
 * isSscc('095201230000000011') // true
 */
export function isSscc(text: string): boolean {
  return /^\d{18}$/.test(text) && hasGs1CheckDigit(text);
}

/**
 * Whether a text can be a GS1 company prefix: 4 to 12 digits (GS1 Ireland's help page; 4 also in the GS1 Barcode Syntax Dictionary).
 *
 * @example
 * isCompanyPrefix('9520123') // true
 */
export function isCompanyPrefix(text: string): boolean {
  return /^\d{4,12}$/.test(text);
}
