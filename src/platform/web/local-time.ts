/** A wall-clock time that the plant's clocks did not show, or that is no time. */
export class NoSuchTime extends Error {}

const wallClock = /^(\d{4}-\d\d-\d\d)[T ](\d\d:\d\d)(?::(\d\d))?$/;

/**
 * The instant at which the plant's clocks showed this time (`2026-03-12T07:41`). In the hour that comes twice when the
 * clocks go back, the second is meant with `later`.
 *
 * @throws {NoSuchTime} for what is no such text, and for the hour that is left out when the clocks go forward
 */
export function instantOfLocal(text: string, timeZone: string, which: 'earlier' | 'later' = 'earlier'): string {
  const [, day, clock, seconds = '00'] = wallClock.exec(text.trim()) ?? [];
  if (day === undefined || clock === undefined) throw new NoSuchTime(text);
  const asUtc = Date.parse(`${day}T${clock}:${seconds}.000Z`);
  if (Number.isNaN(asUtc)) throw new NoSuchTime(text);
  // Offsets of zones lie within a day: whichever of the two sides is right reads back as what was typed.
  const fits = [-86_400_000, 86_400_000]
    .map((side) => asUtc - offsetMilliseconds(asUtc + side, timeZone))
    .filter((at) => at + offsetMilliseconds(at, timeZone) === asUtc)
    .sort((one, other) => one - other);
  const at = which === 'earlier' ? fits[0] : fits.at(-1);
  if (at === undefined) throw new NoSuchTime(text);
  return new Date(at).toISOString();
}

/** An instant as a `datetime-local` field holds it: the plant's clock to the minute. */
export function localOfInstant(at: string, timeZone: string): string {
  const milliseconds = Date.parse(at);
  return new Date(milliseconds + offsetMilliseconds(milliseconds, timeZone)).toISOString().slice(0, 16);
}

/** The same to the second. */
export function localSecondOfInstant(at: string, timeZone: string): string {
  return `${localOfInstant(at, timeZone)}:${at.slice(17, 19)}`;
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** How far the zone's clocks are ahead of UTC at an instant. */
function offsetMilliseconds(at: number, timeZone: string): number {
  let format = formats.get(timeZone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat('en-GB', {
      ...{ timeZone, hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit' },
      ...{ hour: '2-digit', minute: '2-digit', second: '2-digit' },
    });
    formats.set(timeZone, format);
  }
  const parts = new Map(format.formatToParts(at).map(({ type, value }) => [type, value]));
  const part = (name: Intl.DateTimeFormatPartTypes): string => parts.get(name) ?? '00';
  const shown = `${part('year')}-${part('month')}-${part('day')}T${part('hour')}:${part('minute')}:${part('second')}.000Z`;
  return Date.parse(shown) - Math.floor(at / 1000) * 1000;
}
