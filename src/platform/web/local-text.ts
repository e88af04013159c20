const formats = new Map<string, Intl.DateTimeFormat>();

/** An instant as people of the plant read it, such as `Thu 12 Mar 2026, 08:41`. */
export function localText(at: string, timeZone: string): string {
  let format = formats.get(timeZone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat('en-GB', {
      timeZone,
      weekday: 'short',
      day: 'numeric',
      month: 'short',
      year: 'numeric',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    });
    formats.set(timeZone, format);
  }
  return format.format(new Date(at));
}
