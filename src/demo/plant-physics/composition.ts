/** Sugar by the bags it came from: whole grams each, never zero or less. */
export type Composition = Map<string, number>;

export function gramsIn(sugar: ReadonlyMap<string, number>): number {
  let grams = 0;
  for (const part of sugar.values()) grams += part;
  return grams;
}

/** Pours sugar to other sugar. */
export function pourInto(sugar: Composition, more: ReadonlyMap<string, number>): void {
  for (const [bag, grams] of more) sugar.set(bag, (sugar.get(bag) ?? 0) + grams);
}

/**
 * Takes grams out of sugar that is mixed through and through: of each bag its share, rounded up or down to whole grams
 * so that not a gram is lost (the running total is rounded, and each bag gives what it adds to that).
 *
 * @throws RangeError when there is less than that
 */
export function takeMixed(sugar: Composition, grams: number): Composition {
  const held = gramsIn(sugar);
  if (grams > held || grams < 0) throw new RangeError(`${grams} g cannot be taken from ${held} g`);
  if (grams === held) return takeAll(sugar);
  const taken: Composition = new Map();
  let [seen, given] = [0, 0];
  for (const [bag, part] of sugar) {
    seen += part;
    const share = Math.round((seen * grams) / held) - given;
    given += share;
    if (share > 0) moveOver(sugar, taken, bag, share);
  }
  return taken;
}

function moveOver(from: Composition, to: Composition, bag: string, grams: number): void {
  const rest = (from.get(bag) ?? 0) - grams;
  if (rest > 0) from.set(bag, rest);
  else from.delete(bag);
  to.set(bag, grams);
}

export function takeAll(sugar: Composition): Composition {
  const all = new Map(sugar);
  sugar.clear();
  return all;
}
