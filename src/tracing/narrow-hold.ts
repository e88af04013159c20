import { leaveReachJob } from '../open-points/reach-job.js';
import { Injectable } from '@nestjs/common';
import { findHold } from '../disposition/holds.js';
import { narrowHold } from '../disposition/narrow-hold.js';
import { openHolds, type HoldRow } from '../disposition/standings.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { partsToNarrow, type WantedParts } from '../pallets/parts-to-narrow.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import type { HoldNarrowed, NarrowedParts } from './hold.form.js';

export interface NarrowAnswer {
  readonly id: string;
  readonly holdId: string;
  readonly number: string;
  readonly partCount: number;
}

/**
 * A quality officer takes parts out of what a hold reaches, and says why; out of a safety hold only with an assessment, which
 * is signed by proving once more who one is. What is on record about the parts now is the ground: what comes to them
 * later is held again.
 * Refusals: `hold-already-lifted`, `nothing-to-take-out`, `assessment-needed`, `minutes-turned-round`,
 * `part-not-reached`, `part-is-the-hold`, `no-pack-in-these-minutes`; not found: hold, bulk-bag, pallet, lot, packing-run; another
 * site's too.
 */
@Injectable()
export class NarrowHold {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: HoldNarrowed): Promise<NarrowAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const hold = await openHold(tx, siteId, form.hold);
      const assessment = form.assessment ?? null;
      if (hold.hazard === 'safety' && assessment === null)
        throw new Refusal('assessment-needed', { hold: hold.number });
      const parts = await partsToNarrow(tx, siteId, hold, wantedParts(form));
      const { reason } = form;
      const { hazard, id: holdId } = hold;
      const draft = { holdId, hazard, reason, assessment, personId, narrowedAt: change.recordedAt, parts };
      const { id } = await narrowHold(tx, { ...draft, nextId: () => this.ids.next() });
      await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId, at: change.recordedAt });
      return {
        answer: { id, holdId, number: hold.number, partCount: parts.length },
        entry: {
          action: 'narrow-hold',
          subject: { kind: 'hold', id: holdId },
          touches: [
            { kind: hold.scopeKind, id: hold.scopeId },
            ...parts.map(({ unitKind, unitId }) => ({ kind: unitKind, id: unitId })),
          ],
          after: {
            ...{ narrowingId: id, hazard, assessment },
            parts: parts.map(({ unitKind, unitId, fromAt, untilAt }) => ({ unitKind, unitId, fromAt, untilAt })),
          },
          reason,
        },
      };
    });
  }
}

/**
 * A hold that is open.
 *
 * @throws {Refusal} `hold-already-lifted`
 * @throws {NotFound} `hold`
 */
export async function openHold(from: ReadFrom, siteId: string, text: string): Promise<HoldRow> {
  const { id, number, scopeKind, scopeId } = await findHold(from, siteId, text);
  const hold = (await openHolds(from, [{ kind: scopeKind, id: scopeId }])).find((one) => one.id === id);
  if (hold === undefined) throw new Refusal('hold-already-lifted', { hold: number });
  return hold;
}

/** @throws {Refusal} `nothing-to-take-out`, `minutes-turned-round` */
export function wantedParts(form: NarrowedParts): WantedParts {
  const { bagIds, palletIds, lotIds } = form;
  const [runId, fromAt, untilAt] = [form.run ?? null, form.fromAt ?? null, form.untilAt ?? null];
  const minutes = runId === null || fromAt === null || untilAt === null ? null : { runId, fromAt, untilAt };
  if (minutes !== null && minutes.fromAt >= minutes.untilAt) throw new Refusal('minutes-turned-round');
  const wanted = { bagIds: once(bagIds), palletIds: once(palletIds), lotIds: once(lotIds), minutes };
  const count = wanted.bagIds.length + wanted.palletIds.length + wanted.lotIds.length;
  if (count === 0 && minutes === null) throw new Refusal('nothing-to-take-out');
  return wanted;
}

function once(ids: readonly string[] | null | undefined): readonly string[] {
  return [...new Set(ids ?? [])];
}
