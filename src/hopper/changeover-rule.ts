import type { ReadFrom } from '../platform/database/reading.js';
import type { BrokenRule } from './broken-rules.js';
import { rungsBeforeStart } from './changeover-rungs.js';
import { openChangeoverOf } from './changeovers.js';

/** While a line is being changed over, a run of another format waits for the rungs before its start. */
export async function againstChangeover(
  from: ReadFrom,
  line: { readonly id: string; readonly code: string },
  formatId: string,
): Promise<readonly BrokenRule[]> {
  const changeover = await openChangeoverOf(from, line.id);
  if (changeover?.next == null || formatId === changeover.fromFormatId) return [];
  if (!rungsBeforeStart.includes(changeover.next)) return [];
  const place = rungsBeforeStart.indexOf(changeover.next) + 1;
  const { next } = changeover;
  return [{ code: 'changeover-not-finished', facts: { line: line.code, next, place } }];
}
