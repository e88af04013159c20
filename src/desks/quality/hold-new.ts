import { refuseUnusableRange } from '../../disposition/place-hold.js';
import type { ScopeKind } from '../../disposition/standings.js';
import { bagOf } from '../../drying/bulk-bags.js';
import { dryerRunOf } from '../../drying/dryer-runs.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { openHolds, type HoldRow } from '../../disposition/standings.js';
import { refuseUnknownScope } from '../../tracing/hold-scope.js';
import { reachOfHold, type HoldReach } from '../../tracing/hold-reach.js';
import { palletLinesByStatus, type PlacedPallets } from './placed-pallets.js';
import { subjectTextOf } from './hold-text.js';

/** What a hold covers, or would before it is placed. */
export interface HoldPreview {
  readonly kind: ScopeKind;
  readonly id: string;
  readonly fromCount: number | null;
  readonly toCount: number | null;
  readonly subject: string;
  readonly reach: HoldReach;
  /** Where the pallets are, those that have left first. */
  readonly places: readonly PlacedPallets[];
  /** Holds that are open on the same thing already. */
  readonly already: readonly HoldRow[];
}

/** What is asked for. */
export interface HoldSubject {
  readonly kind: ScopeKind;
  readonly id: string;
  readonly fromCount: number | null;
  readonly toCount: number | null;
}

/**
 * @throws {NotFound} where there is nothing to hold
 * @throws {Refusal} `hold-range-not-usable`
 */
export async function previewHold(
  from: ReadFrom,
  subject: HoldSubject,
  hold: HoldRow | null = null,
): Promise<HoldPreview> {
  const { kind, id, fromCount, toCount } = subject;
  refuseUnusableRange({ kind, id }, fromCount, toCount);
  await refuseUnknownScope(from, { kind, id });
  const range = fromCount === null || toCount === null ? null : { runId: id, fromCount, toCount };
  const reach = await reachOfHold(from, { kind, id, range }, hold);
  return {
    ...subject,
    subject: await subjectTextOf(from, kind, id),
    reach,
    places: palletLinesByStatus(reach.possible),
    already: await openHolds(from, await scopesAround(from, subject)),
  };
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
