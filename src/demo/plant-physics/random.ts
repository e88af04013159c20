/** Numbers that look drawn by chance and are the same for the same seed. For the demo only: not for secrets. */
export interface Random {
  /** From 0 (included) to 1 (excluded). */
  next(): number;
  /** Between two numbers, all equally likely. */
  between(from: number, until: number): number;
  /** A whole number, both ends included. */
  whole(from: number, until: number): number;
  /** About a centre, normally distributed. */
  normal(centre: number, spread: number): number;
  /** Happens with this probability. */
  happens(probability: number): boolean;
  pick<Kind>(from: readonly Kind[]): Kind;
}

/**
 * A stream of its own for each name, so that one more number drawn by the dryer changes nothing on the lines.
 * Marsaglia's xorshift with the shifts 13, 17 and 5 (Xorshift RNGs, Journal of Statistical Software 8(14), 2003; from
 * memory), its 32 bits multiplied by an odd number so that the low ones are stirred too.
 */
export function seededRandom(seed: number, name: string): Random {
  let state = startOf(seed, name);
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (Math.imul(state, 0x9e3779b1) >>> 0) / 4_294_967_296;
  };
  const between = (from: number, until: number) => from + (until - from) * next();
  return {
    next,
    between,
    whole: (from, until) => from + Math.floor(next() * (until - from + 1)),
    // Box and Muller's transform; the 1 − keeps the logarithm away from zero.
    normal: (centre, spread) => centre + spread * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    happens: (probability) => next() < probability,
    pick: (from) => {
      const picked = from[Math.floor(next() * from.length)];
      if (picked === undefined) throw new RangeError('Nothing to pick from');
      return picked;
    },
  };
}

/** FNV-1a over seed and name (public domain, from memory); never zero, from which the shifts would not get away. */
function startOf(seed: number, name: string): number {
  let hash = 0x811c9dc5;
  for (const character of `${seed} ${name}`) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193);
  return hash === 0 ? 1 : hash;
}
