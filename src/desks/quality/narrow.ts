import type { HoldRow } from '../../disposition/standings.js';
import { lastSequenceOf } from '../../journal/stale-page.js';
import { contentsOf } from '../../pallets/pallet-list.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import type { NarrowedParts } from '../../tracing/hold.form.js';
import { scopeOfRow } from '../../tracing/hold-reach.js';
import { openHold } from '../../tracing/narrow-hold.js';
import { previewNarrowing, type NarrowingPreview } from '../../tracing/narrowing-preview.js';
import { previewHold, type HoldPreview } from './hold-new.js';

/** Something by its id and the name that people know it by. */
export interface NamedUnit {
  readonly id: string;
  readonly name: string;
}

/** What can be taken out of a hold. */
export interface NarrowChoice {
  readonly hold: HoldRow;
  readonly reached: HoldPreview;
  readonly lots: readonly NamedUnit[];
  readonly runs: readonly NamedUnit[];
}

/**
 * @throws {Refusal} `hold-already-lifted`
 * @throws {NotFound} `hold`
 */
export async function readChoice(from: ReadFrom, siteId: string, holdId: string): Promise<NarrowChoice> {
  const hold = await openHold(from, siteId, holdId);
  const reached = await previewHold(from, scopeOfRow(hold), hold);
  const contents = await contentsOf(
    from,
    reached.reach.possible.map(({ palletId }) => palletId),
  );
  const lots = new Map(contents.map(({ lotId, lotCode }) => [lotId, lotCode]));
  const runs = new Map(contents.map(({ runId, runNumber }) => [runId, runNumber]));
  return { hold, reached, lots: named(lots).filter((lot) => lot.id !== hold.scopeId), runs: named(runs) };
}

/** What a choice would free, and what stays. */
export async function readNarrowing(
  from: ReadFrom,
  siteId: string,
  holdId: string,
  parts: NarrowedParts,
): Promise<{ readonly hold: HoldRow; readonly preview: NarrowingPreview; readonly sequence: number }> {
  const hold = await openHold(from, siteId, holdId);
  const preview = await previewNarrowing(from, siteId, hold, parts);
  return { hold, preview, sequence: await lastSequenceOf(from, { kind: 'hold', id: hold.id }) };
}

function named(names: ReadonlyMap<string, string>): readonly NamedUnit[] {
  return [...names].map(([id, name]) => ({ id, name }));
}
