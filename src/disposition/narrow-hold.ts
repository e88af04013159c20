import type { Tx } from '../platform/database/unit-of-work.js';
import { HoldNarrowing } from './hold-narrowing.entity.js';
import { NarrowedPart } from './narrowed-part.entity.js';
import { NarrowingGround } from './narrowing-ground.entity.js';
import type { NarrowingRow, PartRow } from './narrowings.js';

/** A narrowing to be written. Whoever calls has made sure that the hold reaches these parts, and by what. */
export interface NarrowingDraft extends Omit<NarrowingRow, 'id' | 'parts'> {
  readonly nextId: () => string;
  readonly parts: readonly Omit<PartRow, 'id'>[];
}

/** Writes down which parts a hold no longer reaches, with the ground for each. */
export async function narrowHold(tx: Tx, { nextId, parts, ...narrowing }: NarrowingDraft): Promise<{ id: string }> {
  const id = nextId();
  await tx.insert(HoldNarrowing, { ...narrowing, id, voidedBy: null });
  for (const { ground, ...part } of parts) {
    const partId = nextId();
    await tx.insert(NarrowedPart, { ...part, id: partId, narrowingId: id });
    for (const { runId, fromCount, toCount } of ground.packs) {
      await tx.insert(NarrowingGround, { ...noGround, id: nextId(), partId, runId, fromCount, toCount });
    }
    for (const { bagId, periodId, mostGrams, word } of ground.bags) {
      await tx.insert(NarrowingGround, { ...noGround, id: nextId(), partId, bagId, periodId, mostGrams, word });
    }
  }
  return { id };
}

const noGround = {
  runId: null,
  fromCount: null,
  toCount: null,
  bagId: null,
  periodId: null,
  mostGrams: null,
  word: null,
};
