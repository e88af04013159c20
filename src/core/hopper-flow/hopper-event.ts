/**
 * A mass with hard limits: the true grams lie between `lowerGrams` and `upperGrams`, both included. Whole grams, never
 * negative.
 */
export interface Mass {
  readonly lowerGrams: number;
  /** What was recorded or calculated: lower ≤ grams ≤ upper. */
  readonly grams: number;
  readonly upperGrams: number;
}

/** Sugar that goes into the hopper: a tip, a rework bin, the heel or residue that a period starts with. */
export interface Addition {
  readonly kind: 'addition';
  readonly id: string;
  readonly mass: Mass;
}

/** Sugar that leaves the hopper: packs between two counts, rejects, samples, sweepings, on whichever line. */
export interface Exit {
  readonly kind: 'exit';
  readonly id: string;
  readonly mass: Mass;
}

/**
 * What someone or something measured to be inside: between lower and upper grams. Cuts nothing, is never calculated
 * back.
 */
export interface LevelSeen {
  readonly kind: 'level-seen';
  readonly id: string;
  readonly lowerGrams: number;
  readonly upperGrams: number;
}

/**
 * The most that can be inside at this place because no more fits: the capacity, widened by what may not be in yet or
 * be out already.
 */
export interface Ceiling {
  readonly kind: 'ceiling';
  /** The addition after which it holds. */
  readonly id: string;
  readonly upperGrams: number;
}

export type HopperEvent = Addition | Exit | LevelSeen | Ceiling;

/**
 * One hopper from one proven empty to the next, everything in order; exits of all lines that it feeds are in the one
 * list. `capacityGrams` counts the chute and a hanging bag; null where it is not known, or where ceilings in the list
 * stand for it.
 */
export interface HopperPeriod {
  readonly capacityGrams: number | null;
  readonly events: readonly HopperEvent[];
}

/**
 * A mass without doubt: all three values are the same.
 * @param grams whole grams, 0 or more
 * @throws RangeError on a negative or broken number
 * @example exactMass(1000) // { lowerGrams: 1000, grams: 1000, upperGrams: 1000 }
 */
export function exactMass(grams: number): Mass {
  return massWithin(grams, 0);
}

/**
 * A mass with the same limit of error on both sides, such as a scale's maximum permissible error. The lower limit
 * stops at 0.
 * @param grams whole grams, 0 or more
 * @param limitGrams whole grams, 0 or more
 * @throws RangeError on a negative or broken number
 * @example massWithin(1000, 5) // { lowerGrams: 995, grams: 1000, upperGrams: 1005 }
 */
export function massWithin(grams: number, limitGrams: number): Mass {
  const mass = { lowerGrams: Math.max(0, grams - limitGrams), grams, upperGrams: grams + limitGrams };
  assertMass(mass);
  return mass;
}

/**
 * Refuses a period that cannot be calculated with: a mass that is not whole grams in order, an id used twice by
 * additions or by exits. An empty period is fine.
 * @throws RangeError naming the event
 * @example assertHopperPeriod({ capacityGrams: null, events: [] }) // passes
 */
export function assertHopperPeriod(period: HopperPeriod): void {
  if (sound.has(period)) return;
  if (period.capacityGrams !== null) assertGrams(period.capacityGrams, 'capacityGrams');
  const seen = { addition: new Set<string>(), exit: new Set<string>() };
  for (const event of period.events) {
    if (event.kind === 'ceiling') assertGrams(event.upperGrams, event.id);
    else if (event.kind === 'level-seen') assertRange(event.lowerGrams, event.upperGrams, event.id);
    else {
      assertMass(event.mass, event.id);
      const ids = seen[event.kind];
      const before = ids.size;
      if (ids.add(event.id).size === before) {
        throw new RangeError(`${event.kind} ${event.id} stands twice in the period`);
      }
    }
  }
  sound.add(period);
}

/** Periods that were checked, or made of one that was: laid out for bounds and for a model, one is checked once. */
const sound = new WeakSet<HopperPeriod>();

/**
 * Says that a period needs no check: its events are those of a checked one, in another order or with wider limits.
 * @example soundPeriod({ capacityGrams: null, events: [] }).events // []
 */
export function soundPeriod(period: HopperPeriod): HopperPeriod {
  sound.add(period);
  return period;
}

function assertMass(mass: Mass, name = 'mass'): void {
  assertRange(mass.lowerGrams, mass.grams, name);
  assertRange(mass.grams, mass.upperGrams, name);
}

/**
 * Refuses limits that are not whole grams, 0 or more, lower first.
 * @throws RangeError with the name
 * @example assertRange(0, 40_000, 'run down') // passes
 */
export function assertRange(lowerGrams: number, upperGrams: number, name: string): void {
  assertGrams(lowerGrams, name);
  assertGrams(upperGrams, name);
  if (lowerGrams > upperGrams)
    throw new RangeError(`${name}: the lower limit ${lowerGrams} g is above ${upperGrams} g`);
}

function assertGrams(grams: number, name: string): void {
  if (!Number.isSafeInteger(grams) || grams < 0)
    throw new RangeError(`${name}: ${grams} is not a whole number of grams`);
}
