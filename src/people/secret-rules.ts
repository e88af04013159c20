import { Refusal } from '../platform/refusal.js';

/** The shortest password that is taken. */
const leastPasswordLength = 10;

/** Fewer different characters than this make a password that is guessed at once. */
const leastDistinct = 5;

/**
 * @throws {Refusal} `password-too-short`, `password-has-code` (it contains the person's code), `password-too-easy`
 */
export function refuseEasyPassword(password: string, personCode: string): void {
  if (password.length < leastPasswordLength) throw new Refusal('password-too-short', { least: leastPasswordLength });
  const lower = password.toLowerCase();
  if (personCode.length >= 3 && lower.includes(personCode.toLowerCase())) throw new Refusal('password-has-code');
  if (new Set(lower).size < leastDistinct || isStraight(lower)) throw new Refusal('password-too-easy');
}

/** @throws {Refusal} `pin-too-easy`: one digit repeated, a straight count up or down, or the person's code */
export function refuseEasyPin(pin: string, personCode: string): void {
  if (new Set(pin).size < 2 || isStraight(pin) || pin === personCode) throw new Refusal('pin-too-easy');
}

/** Each character follows the one before by one step up, or each by one step down: `123456`, `fedcba`. */
function isStraight(text: string): boolean {
  const steps = [...text].slice(1).map((letter, place) => letter.charCodeAt(0) - text.charCodeAt(place));
  return steps.every((step) => step === 1) || steps.every((step) => step === -1);
}
