import type { ScopeKind } from '../../disposition/standings.js';
import { bagOf } from '../../drying/bulk-bags.js';
import { dryerRunOf } from '../../drying/dryer-runs.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { openHolds, type HoldRow } from '../../disposition/standings.js';
import { reachOfHold, type HoldReach, type ReachScope } from '../../tracing/hold-reach.js';
import { palletLinesByStatus, type PlacedPallets } from './placed-pallets.js';
import { subjectTextOf } from './hold-text.js';

/** What a hold covers, or would before it is placed. */
export interface HoldPreview extends ReachScope {
  readonly subject: string;
  readonly reach: HoldReach;
  /** Where the pallets are, those that have left first. */
  readonly places: readonly PlacedPallets[];
  /** Holds that are open on the same thing already. */
  readonly already: readonly HoldRow[];
}

/** What is asked for. */
export type HoldSubject = ReachScope;

/** What is asked for has been looked up at the site of who asks. */
export async function previewHold(
  from: ReadFrom,
  subject: HoldSubject,
  hold: HoldRow | null = null,
): Promise<HoldPreview> {
  const reach = await reachOfHold(from, subject, hold);
  return {
    ...subject,
    subject: await subjectTextOf(from, subject),
    reach,
    places: palletLinesByStatus(reach.possible),
    already: (await openHolds(from, await scopesAround(from, subject))).filter((one) => meets(one, subject)),
  };
}

/** Another time of the same dryer, line or run is another matter. */
function meets(hold: HoldRow, { fromAt, untilAt }: HoldSubject): boolean {
  if (hold.fromAt === null || hold.untilAt === null || fromAt === null || untilAt === null) return true;
  return hold.fromAt < untilAt && hold.untilAt > fromAt;
}

async function scopesAround(from: ReadFrom, { kind, id }: HoldSubject): Promise<{ kind: ScopeKind; id: string }[]> {
  if (kind !== 'bulk-bag') return [{ kind, id }];
  const { dryerRunId } = await bagOf(from, id);
  return dryerRunId === null
    ? [{ kind, id }]
    : [
        { kind, id },
        { kind: 'dryer-run', id: (await dryerRunOf(from, dryerRunId)).id },
      ];
}
