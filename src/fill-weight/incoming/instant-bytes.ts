const [zero, nine] = [0x30, 0x39];
const [colon, point, dash, plus, letterT, letterZ] = [0x3a, 0x2e, 0x2d, 0x2b, 0x54, 0x5a];
const centisecondsOfDay = 8_640_000;
const centisecondsOfMinute = 6000;

/** The day that was read last: lines of a batch mostly share it. */
const last = { day: -1, centiseconds: Number.NaN };

/**
 * Reads an instant, ISO 8601 with its offset (`2026-03-12T07:41:03.41Z`), from bytes. What is finer than a hundredth of a
 * second is cut off.
 *
 * @returns hundredths of a second since 1970 UTC; NaN for anything else, a day that no calendar has among it
 */
export function instantOfBytes(bytes: Uint8Array, start: number, end: number): number {
  if (end - start < 17 || bytes[start + 10] !== letterT) return Number.NaN;
  const day = dayOf(bytes, start);
  const hour = twoDigits(bytes, start + 11);
  const minute = twoDigits(bytes, start + 14);
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || bytes[start + 13] !== colon) return Number.NaN;
  const inMinute = secondsOf(bytes, start + 16, end);
  const offset = offsetOf(bytes, inMinute.next, end);
  return day + (hour * 60 + minute - offset) * centisecondsOfMinute + inMinute.centiseconds;
}

/** Overwritten by each reading: nothing is made anew for a line. */
const seconds = { centiseconds: 0, next: 0 };

/** Seconds and their fraction where they stand; both may be left out. */
function secondsOf(bytes: Uint8Array, start: number, end: number): typeof seconds {
  seconds.centiseconds = 0;
  seconds.next = start;
  if (bytes[start] !== colon) return seconds;
  const whole = twoDigits(bytes, start + 1);
  let place = start + 3;
  let [hundredths, digits] = [0, 0];
  if (bytes[place] === point) {
    place += 1;
    for (; place < end && isDigit(bytes[place] as number); place += 1, digits += 1) {
      if (digits < 2) hundredths = hundredths * 10 + (bytes[place] as number) - zero;
    }
    if (digits === 0 || digits > 9) hundredths = Number.NaN;
    if (digits === 1) hundredths *= 10;
  }
  seconds.centiseconds = whole < 0 || whole > 59 ? Number.NaN : whole * 100 + hundredths;
  seconds.next = place;
  return seconds;
}

/** Minutes that local time is ahead of UTC; NaN where the text does not end with an offset. */
function offsetOf(bytes: Uint8Array, start: number, end: number): number {
  const sign = bytes[start];
  if (sign === letterZ) return start + 1 === end ? 0 : Number.NaN;
  if ((sign !== plus && sign !== dash) || start + 6 !== end || bytes[start + 3] !== colon) return Number.NaN;
  const [hours, minutes] = [twoDigits(bytes, start + 1), twoDigits(bytes, start + 4)];
  if (hours < 0 || hours > 23 || minutes < 0 || minutes > 59) return Number.NaN;
  return (sign === dash ? -1 : 1) * (hours * 60 + minutes);
}

/** Hundredths of a second from 1970 to the begin of a day `YYYY-MM-DD` of the years 1900 to 2199. */
function dayOf(bytes: Uint8Array, start: number): number {
  const century = twoDigits(bytes, start);
  const [inCentury, month, dayOfMonth] = [
    twoDigits(bytes, start + 2),
    twoDigits(bytes, start + 5),
    twoDigits(bytes, start + 8),
  ];
  if (century < 19 || century > 21 || inCentury < 0 || month < 1 || dayOfMonth < 1) return Number.NaN;
  if (bytes[start + 4] !== dash || bytes[start + 7] !== dash) return Number.NaN;
  const year = century * 100 + inCentury;
  const key = (year * 100 + month) * 100 + dayOfMonth;
  if (key === last.day) return last.centiseconds;
  const at = Date.UTC(year, month - 1, dayOfMonth);
  const isOfCalendar = month <= 12 && new Date(at).getUTCDate() === dayOfMonth;
  last.day = key;
  last.centiseconds = isOfCalendar ? (at / 86_400_000) * centisecondsOfDay : Number.NaN;
  return last.centiseconds;
}

function isDigit(byte: number): boolean {
  return byte >= zero && byte <= nine;
}

/** −1 where there are no two digits. */
function twoDigits(bytes: Uint8Array, place: number): number {
  const tens = (bytes[place] as number) - zero;
  const ones = (bytes[place + 1] as number) - zero;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : -1;
}

const encoder = new TextEncoder();

/** The same from a text. */
export function instantOfText(text: string): number {
  const bytes = encoder.encode(text);
  return instantOfBytes(bytes, 0, bytes.length);
}
