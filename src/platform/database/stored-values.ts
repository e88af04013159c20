/** A whole number from either database (PostgreSQL answers 64-bit numbers as text), never beyond 2^53. */
export function toWhole(stored: string | number | bigint): number {
  const value = Number(stored);
  if (!Number.isSafeInteger(value)) throw new RangeError(`not a whole number within 2^53: ${String(stored)}`);
  return value;
}

/** A truth value from either database (SQLite answers 0 or 1). */
export function toBoolean(stored: boolean | number): boolean {
  return stored === true || stored === 1;
}
