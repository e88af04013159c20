/** A time as the machine's own clock showed it: `2026-03-12 08:41:03.41`. */
export function clockText(atCentiseconds: number, timeZone: string): string {
  const at = new Date(atCentiseconds * 10);
  if (Number.isNaN(at.getTime())) return '–';
  const format = new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'medium' });
  return `${format.format(at)}.${String(((atCentiseconds % 100) + 100) % 100).padStart(2, '0')}`;
}
