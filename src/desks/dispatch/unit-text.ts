/** The last four signs of an SSCC or a bag's number: what people tell pallets apart by. */
export function lastDigits(name: string): string {
  return name.slice(-4);
}

/** The end of a lot's code, where pallets of one day differ; several lots say so. */
export function lotTail(lots: readonly string[]): string {
  const [first] = lots;
  if (first === undefined) return '';
  return lots.length > 1 ? `${first.slice(-4)}+` : first.slice(-6);
}
