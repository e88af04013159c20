/** Sugar of several additions, mixed: the share of each by its place in the period; the shares sum to 1. */
export type Blend = ReadonlyMap<number, number>;

/** A part of a mixture, in grams. */
export interface BlendPart {
  readonly blend: Blend;
  readonly grams: number;
}

/**
 * A smaller share is dropped: a thousand of them do not reach the rounding of 1 (2⁻⁵³ is 1.1·10⁻¹⁶), and without this
 * every bag of a period would stay in every later pack.
 */
export const smallestShare = 1e-19;

/**
 * Mixes parts together.
 * @param parts each 0 g or more
 * @returns an empty blend where there is nothing to mix
 * @example mixBlends([{ blend: new Map([[0, 1]]), grams: 300 }, { blend: new Map([[1, 1]]), grams: 1000 }])
 * // Map { 0 → 0.2307692…, 1 → 0.7692307… }
 */
export function mixBlends(parts: readonly BlendPart[]): Blend {
  const total = parts.reduce((sum, part) => sum + part.grams, 0);
  if (!(total > 0)) return new Map();
  const grams = gramsByAddition(parts.filter((part) => part.grams > total * smallestShare));
  const shares = Array.from(grams, ([place, inPart]) => [place, inPart / total] as const);
  return new Map(shares.filter(([, share]) => share > smallestShare));
}

/**
 * What each addition has in several parts together, oldest first.
 * @example gramsByAddition([{ blend: new Map([[1, 0.5], [0, 0.5]]), grams: 10 }]) // Map { 0 → 5, 1 → 5 }
 */
export function gramsByAddition(parts: readonly BlendPart[]): ReadonlyMap<number, number> {
  const grams = new Map<number, number>();
  for (const part of parts) {
    for (const [place, share] of part.blend) grams.set(place, (grams.get(place) ?? 0) + share * part.grams);
  }
  return new Map([...grams].sort(([one], [other]) => one - other));
}
