import type { ReadFrom } from '../platform/database/reading.js';
import { BadForm, NotFound, Refusal } from '../platform/refusal.js';
import { shiftAt } from '../plant/plant-facts.js';
import { nameOfScope } from './recall-reach.js';
import type { RecallScopeForm } from './recall.form.js';
import type { RecallScopeRow } from './recalls.js';

/**
 * What a recall is to be of, as it is kept. A shift without an end is the whole shift that its time falls in.
 *
 * @throws {NotFound} the thing
 * @throws {BadForm} where a time is missing
 * @throws {Refusal} `recall-time-not-usable`
 */
export async function settleScope(from: ReadFrom, siteId: string, form: RecallScopeForm): Promise<RecallScopeRow> {
  const { scopeKind, scopeId, fromAt = null, untilAt = null } = form;
  const known = await nameOfScope(from, form);
  if (known.siteId !== siteId) throw new NotFound(scopeKind, scopeId);
  if (scopeKind === 'bulk-bag' || scopeKind === 'lot') return { scopeKind, scopeId, fromAt: null, untilAt: null };
  if (scopeKind === 'packing-run' && fromAt === null && untilAt === null) {
    return { scopeKind, scopeId, fromAt: null, untilAt: null };
  }
  if (fromAt === null) throw new BadForm([{ field: 'fromAt', code: 'field-missing', facts: {} }]);
  if (untilAt === null && scopeKind === 'packing-run') {
    throw new BadForm([{ field: 'untilAt', code: 'field-missing', facts: {} }]);
  }
  if (untilAt !== null) {
    if (untilAt <= fromAt) throw new Refusal('recall-time-not-usable', { fromAt, untilAt });
    return { scopeKind, scopeId, fromAt, untilAt };
  }
  const shift = await shiftAt(from, siteId, fromAt);
  return { scopeKind, scopeId, fromAt: shift.startsAt, untilAt: shift.endsAt };
}
