/**
 * The GS1 check digit of a number that does not have one yet.
 *
 * From the right the digits weigh 3, 1, 3, 1 …; the check digit is the distance of the sum to the next multiple of ten. One rule for
 * GTIN-8, -12, -13, -14, GLN, SSCC and GSIN (GS1 General Specifications 7.9; gs1.org check digit calculator).
 *
 * @param digits one or more digits 0 to 9, without the check digit.
 * @throws RangeError where `digits` is empty or holds anything but digits.
 * @example
 * gs1CheckDigit('629104150021') // '3', the published worked example
 */
export function gs1CheckDigit(digits: string): string {
  if (!/^\d+$/.test(digits)) throw new RangeError(`not digits: "${digits}"`);
  let sum = 0;
  for (let fromRight = 0; fromRight < digits.length; fromRight += 1) {
    const weight = fromRight % 2 === 0 ? 3 : 1;
    sum += weight * Number(digits.charAt(digits.length - 1 - fromRight));
  }
  return String((10 - (sum % 10)) % 10);
}

/**
 * Whether the last digit of a number is its GS1 check digit. Anything but two or more digits is answered with false.
 *
 * It catches every single wrong digit, but not every pair of swapped neighbours (two digits that differ by 5 are not noticed).
 *
 * @example
 * hasGs1CheckDigit('6291041500213') // true
 */
export function hasGs1CheckDigit(digits: string): boolean {
  return /^\d{2,}$/.test(digits) && gs1CheckDigit(digits.slice(0, -1)) === digits.slice(-1);
}
