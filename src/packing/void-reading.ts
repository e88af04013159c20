import type { Change } from '../journal/entry-draft.js';
import { voidFact } from '../journal/void-fact.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { PackCount } from './pack-count.entity.js';
import { followCounts } from './run-states.js';

/** The reading of the counter that a coder or film change brought along. */
export interface ReadingOfChange {
  readonly runId: string;
  readonly packCount: number;
  readonly countedAt: string;
  readonly occasion: 'coder-change' | 'film-change';
}

/** Makes the count void that came with a change, where one did; answers whether. */
export async function voidReading(tx: Tx, reading: ReadingOfChange, change: Change): Promise<boolean> {
  const counts = await tx.find(PackCount, { ...reading, voidedBy: null });
  const [count] = counts;
  if (count === undefined) return false;
  await voidFact(tx, PackCount, count.id, change);
  await followCounts(tx, reading.runId);
  return true;
}
