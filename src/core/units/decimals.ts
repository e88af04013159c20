/** Why a typed decimal was not taken. */
export type DecimalProblem = 'empty' | 'not-a-number' | 'two-separators' | 'too-long';

/** A typed decimal: its canonical text, or why it was not taken. */
export type DecimalReading =
  { readonly ok: true; readonly decimal: string } | { readonly ok: false; readonly problem: DecimalProblem };

/** Longer than any reading of a balance or photometer; keeps pasted pages out. */
const LONGEST_DECIMAL = 30;

const CANONICAL = /^(?:0|-?[1-9]\d*|-?(?:0|[1-9]\d*)\.\d*[1-9])$/;

/**
 * Reads a result as a person types it, "0,02" or "0.02", exactly: no binary fraction is ever made of it.
 *
 * One comma or one point is the decimal separator; a text with two separators of any kind ("1.234,5") is refused, because nobody
 * can know which was meant. Spaces around it are dropped. A leading minus is allowed; a leading plus is dropped.
 * The canonical text has a point, no superfluous zeros in front or behind ("00.020" is "0.02"), and no "-0".
 *
 * @returns `ok` with the canonical decimal text, or the problem. Never throws.
 * @example
 * readDecimal('0,020') // { ok: true, decimal: '0.02' }
 */
export function readDecimal(text: string): DecimalReading {
  const typed = text.trim().replace(/\u2212/g, '-');
  if (typed === '') return { ok: false, problem: 'empty' };
  if (typed.length > LONGEST_DECIMAL) return { ok: false, problem: 'too-long' };
  if (/^[+-]?[\d.,]+$/.test(typed) && (typed.match(/[.,]/g) ?? []).length > 1) {
    return { ok: false, problem: 'two-separators' };
  }
  const parts = /^([+-]?)(\d*)(?:[.,](\d*))?$/.exec(typed);
  const whole = parts?.[2] ?? '';
  const fraction = parts?.[3] ?? '';
  if (parts === null || whole + fraction === '') return { ok: false, problem: 'not-a-number' };
  return { ok: true, decimal: canonical(parts[1] === '-', whole, fraction) };
}

/**
 * Whether a text already is a canonical decimal, as `readDecimal` gives it and as it is stored.
 *
 * @example
 * isDecimal('0.02') // true
 * isDecimal('0.020') // false: the superfluous zero
 */
export function isDecimal(text: string): boolean {
  return text.length <= LONGEST_DECIMAL && CANONICAL.test(text);
}

/**
 * Compares two canonical decimals exactly: -1 where the first is smaller, 0 where they are equal, 1 where it is greater.
 * A result exactly at a limit compares as 0.
 *
 * @throws RangeError where one of them is not canonical.
 * @example
 * compareDecimals('0.06', '0.1') // -1
 */
export function compareDecimals(left: string, right: string): -1 | 0 | 1 {
  const places = Math.max(decimalPlaces(left), decimalPlaces(right));
  const difference = scaled(left, places) - scaled(right, places);
  if (difference === 0n) return 0;
  return difference < 0n ? -1 : 1;
}

/**
 * How many digits stand behind the point of a canonical decimal.
 *
 * @throws RangeError where it is not canonical.
 * @example
 * decimalPlaces('0.02') // 2
 */
export function decimalPlaces(decimal: string): number {
  if (!isDecimal(decimal)) throw new RangeError(`not a canonical decimal: "${decimal}"`);
  const point = decimal.indexOf('.');
  return point < 0 ? 0 : decimal.length - point - 1;
}

/**
 * A canonical decimal as a whole number of its `places`-th decimal place: 0.02 with 4 places is 200.
 *
 * @param places digits behind the point that the whole number counts, 0 to 12.
 * @throws RangeError where the decimal has more digits than `places` (nothing is rounded), where `places` is out of range, or where the
 * whole number is beyond 2^53 - 1.
 * @example
 * toScaledInteger('0.02', 4) // 200
 */
export function toScaledInteger(decimal: string, places: number): number {
  checkPlaces(places);
  if (decimalPlaces(decimal) > places) throw new RangeError(`${decimal} has more than ${places} decimal places`);
  const value = Number(scaled(decimal, places));
  if (!Number.isSafeInteger(value)) throw new RangeError(`${decimal} is too large for a whole number`);
  return value;
}

/**
 * The canonical decimal of a whole number of `places`-th decimal places: the way back from `toScaledInteger`.
 *
 * @throws RangeError where `value` is not a safe whole number or `places` is not 0 to 12.
 * @example
 * fromScaledInteger(200, 4) // '0.02'
 */
export function fromScaledInteger(value: number, places: number): string {
  checkPlaces(places);
  if (!Number.isSafeInteger(value)) throw new RangeError(`not a whole number: ${value}`);
  const digits = Math.abs(value)
    .toString()
    .padStart(places + 1, '0');
  const cut = digits.length - places;
  return canonical(value < 0, digits.slice(0, cut), digits.slice(cut));
}

/**
 * A canonical decimal with at least `places` digits behind the point, as a certificate shows it; more digits are kept, never rounded off.
 *
 * @throws RangeError where the decimal is not canonical or `places` is not 0 to 12.
 * @example
 * withDecimalPlaces('0.02', 3) // '0.020'
 */
export function withDecimalPlaces(decimal: string, places: number): string {
  checkPlaces(places);
  const missing = places - decimalPlaces(decimal);
  if (missing <= 0) return decimal;
  return (decimal.includes('.') ? decimal : `${decimal}.`) + '0'.repeat(missing);
}

function canonical(negative: boolean, whole: string, fraction: string): string {
  const front = whole.replace(/^0+(?=\d)/, '') || '0';
  const behind = fraction.replace(/0+$/, '');
  const magnitude = behind === '' ? front : `${front}.${behind}`;
  return negative && magnitude !== '0' ? `-${magnitude}` : magnitude;
}

function scaled(decimal: string, places: number): bigint {
  const digits = decimal.replace('.', '');
  return BigInt(digits) * 10n ** BigInt(places - decimalPlaces(decimal));
}

function checkPlaces(places: number): void {
  if (!Number.isInteger(places) || places < 0 || places > 12)
    throw new RangeError(`decimal places not 0 to 12: ${places}`);
}
