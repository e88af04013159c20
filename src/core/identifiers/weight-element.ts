import type { Gs1Element } from './elements.js';

/**
 * A net (310) or gross (330) weight as an element, with as many decimals of a kilogram as it needs and six digits can hold: up to
 * 999.999 kg in grams, up to 9 999.99 kg in tens of grams, up to 99 999.9 kg in hundreds, beyond that in kilograms.
 *
 * Three decimals are used as long as they fit, so that the weights of small and large units look alike.
 *
 * @param grams from 0 up, a whole number.
 * @returns the element, or null where the weight can't be written without losing grams. Never rounds.
 * @throws RangeError where `grams` is not a whole number from 0.
 * @example
 * weightElement('310', 980_000) // { ai: '3103', value: '980000' }
 * weightElement('330', 1_020_500) // { ai: '3302', value: '102050' }
 */
export function weightElement(kind: '310' | '330', grams: number): Gs1Element | null {
  if (!Number.isSafeInteger(grams) || grams < 0) throw new RangeError(`not whole grams from 0: ${grams}`);
  for (const decimals of [3, 2, 1, 0]) {
    const unitGrams = 10 ** (3 - decimals);
    const fits = grams / unitGrams < 1_000_000;
    if (fits && grams % unitGrams === 0) {
      return { ai: `${kind}${decimals}`, value: String(grams / unitGrams).padStart(6, '0') };
    }
  }
  return null;
}

/**
 * The whole grams of a net or gross weight element: the last digit of its identifier counts the decimals of a kilogram.
 *
 * @returns null where it is no weight element, or where it states a fraction of a gram.
 * @example
 * weightElementGrams({ ai: '3102', value: '098000' }) // 980_000
 */
export function weightElementGrams({ ai, value }: Gs1Element): number | null {
  if (!/^3[13]0[0-5]$/.test(ai) || !/^\d{6}$/.test(value)) return null;
  const hundredthsOfGram = Number(value) * 10 ** (5 - Number(ai.charAt(3)));
  return hundredthsOfGram % 100 === 0 ? hundredthsOfGram / 100 : null;
}
