import type { Columns, Tx } from '../platform/database/unit-of-work.js';
import { OpenPointEnd } from './open-point-end.entity.js';
import { OpenPointState } from './open-point-state.entity.js';

/** Ends a point that is open; false where somebody else has ended it. */
export async function endPoint(
  tx: Tx,
  end: Columns<OpenPointEnd> & { readonly id: string; readonly pointId: string },
): Promise<boolean> {
  const ended = await tx.remove(OpenPointState, { pointId: end.pointId });
  if (ended !== 1) return false;
  await tx.insert(OpenPointEnd, end);
  return true;
}
