/**
 * A point in time as text of fixed width, always UTC: `YYYY-MM-DDTHH:MM:SS.sssZ`.
 *
 * Because the width is fixed, two instants compare as text in the order of time.
 */
export type Instant = string;

const instantShape = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/;

/**
 * Years 1600 to 9999: later the text would need another width, earlier the zone database reckons in another calendar.
 */
const earliestMilliseconds = Date.parse('1600-01-01T00:00:00.000Z');
const latestMilliseconds = Date.parse('9999-12-31T23:59:59.999Z');

/**
 * The milliseconds since 1970-01-01T00:00Z of an instant.
 *
 * @param at an instant; days and hours that do not exist (30 February, 24:00) are refused, not rolled over
 * @throws RangeError when the text is not an instant of the fixed width within the years 1600 to 9999
 * @example millisecondsOfInstant('1970-01-01T00:00:01.500Z') // 1500
 */
export function millisecondsOfInstant(at: Instant): number {
  const milliseconds = instantShape.test(at) ? Date.parse(at) : NaN;
  if (Number.isNaN(milliseconds) || instantOfMilliseconds(milliseconds) !== at) {
    throw new RangeError(`Not an instant of the form YYYY-MM-DDTHH:MM:SS.sssZ: ${at}`);
  }
  return milliseconds;
}

/**
 * The instant of a count of milliseconds since 1970-01-01T00:00Z.
 *
 * @param milliseconds a whole number within the years 1600 to 9999
 * @throws RangeError outside of them, or when it is not whole
 * @example instantOfMilliseconds(1500) // '1970-01-01T00:00:01.500Z'
 */
export function instantOfMilliseconds(milliseconds: number): Instant {
  const isInRange = milliseconds >= earliestMilliseconds && milliseconds <= latestMilliseconds;
  if (!Number.isInteger(milliseconds) || !isInRange) {
    throw new RangeError(`Not whole milliseconds within the years 1600 to 9999: ${milliseconds}`);
  }
  return new Date(milliseconds).toISOString();
}
