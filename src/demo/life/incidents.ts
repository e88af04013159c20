import type { Random } from '../plant-physics/random.js';
import type { DemoPlan } from './demo-plan.js';
import type { Minute } from './minutes.js';

/** What goes wrong, or otherwise than usual, at least once in every demo. */
export const incidentKinds = [
  'late-scan',
  'skipped-tip',
  'wet-sugar',
  'part-bag',
  'wrong-tare',
  'residue-left',
  'dark-sugar',
  'wrong-scan',
  'held-bag',
  'day-late-result',
  'unreadable-number',
  'no-hand-sample',
  'late-code',
  'split-pallet',
  'stale-scale',
] as const;
export type IncidentKind = (typeof incidentKinds)[number];

/** Incidents wait for their first occasion after a time of their own. */
export class Incidents {
  private readonly waiting: { readonly kind: IncidentKind; readonly from: Minute }[] = [];

  constructor(plan: DemoPlan, random: Random) {
    for (const span of eachStretch(plan)) {
      incidentKinds.forEach((kind, place) => {
        const share = (place + random.between(0.2, 0.8)) / (incidentKinds.length + 4);
        this.waiting.push({ kind, from: Math.round(span.from + share * (span.until - span.from)) });
      });
    }
  }

  /** Whether it happens now; if so, it does not happen again until its next time. */
  happensNow(kind: IncidentKind, minute: Minute): boolean {
    const place = this.waiting.findIndex((incident) => incident.kind === kind && incident.from <= minute);
    if (place >= 0) this.waiting.splice(place, 1);
    return place >= 0;
  }
}

const stretchMinutes = 7 * 1440;

/** All of them once a week; in a shorter demo once. */
function eachStretch(plan: DemoPlan): readonly { readonly from: Minute; readonly until: Minute }[] {
  const count = Math.max(1, Math.floor((plan.until - plan.from) / stretchMinutes));
  const length = (plan.until - plan.from) / count;
  return Array.from({ length: count }, (_, place) => ({
    from: plan.from + place * length,
    until: plan.from + (place + 1) * length,
  }));
}
