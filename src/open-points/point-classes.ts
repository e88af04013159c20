/**
 * How much a point may interrupt: `stop` blocks what somebody is doing, `act-soon` shows a banner, `note` waits on the list.
 * Of all points few may be the first two (practice aims at a twentieth and three twentieths).
 */
export type PointClass = 'stop' | 'act-soon' | 'note';

/** How a cause interrupts, and how long there is to act. What is not named here waits on the list. */
interface Interruption {
  readonly pointClass: Exclude<PointClass, 'note'>;
  /** The time there is to act before it costs more. Our own values, no source. */
  readonly withinMinutes: number;
}

/**
 * The causes that interrupt. Each is a cause (its sentence), a person (its role), an act (what the sentence asks for) and a
 * time; what lacks one of the four has no place here.
 */
const interruptions: Readonly<Record<string, Interruption>> = {
  'line-check-failed': { pointClass: 'stop', withinMinutes: 10 },
  'labels-swapped-loaded': { pointClass: 'stop', withinMinutes: 10 },
  'labels-swapped-held': { pointClass: 'act-soon', withinMinutes: 30 },
  'held-after-leaving': { pointClass: 'act-soon', withinMinutes: 30 },
  'line-check-overdue': { pointClass: 'act-soon', withinMinutes: 15 },
  'weigher-silent': { pointClass: 'act-soon', withinMinutes: 20 },
  'hopper-level-impossible': { pointClass: 'act-soon', withinMinutes: 20 },
  'code-not-as-intended': { pointClass: 'act-soon', withinMinutes: 10 },
  'complaint-food-safety': { pointClass: 'act-soon', withinMinutes: 60 },
  'torn-bag-found': { pointClass: 'act-soon', withinMinutes: 30 },
  'scale-check-failed': { pointClass: 'act-soon', withinMinutes: 60 },
  'hold-without-class': { pointClass: 'act-soon', withinMinutes: 60 },
  'weight-corrected-after-loading': { pointClass: 'act-soon', withinMinutes: 30 },
  'vehicle-failed-check': { pointClass: 'act-soon', withinMinutes: 15 },
};

export function pointClassOf(cause: string): PointClass {
  return interruptions[cause]?.pointClass ?? 'note';
}

/** How long there is to act; null for what only waits on the list. */
export function minutesToAct(cause: string): number | null {
  return interruptions[cause]?.withinMinutes ?? null;
}

export const interruptingCauses: readonly string[] = Object.keys(interruptions);
