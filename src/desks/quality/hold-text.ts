import type { ScopeKind } from '../../disposition/standings.js';
import { dryerRunOf } from '../../drying/dryer-runs.js';
import { periodOf } from '../../hopper/hopper-period-rows.js';
import { hopperOf } from '../../plant/plant-facts.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { say } from '../../platform/sentences/sentences.js';
import { subjectById } from '../../tracing/subject-by-id.js';
import type { BagGroup } from './waiting-bags.js';

/** The kind of a thing and the name that people know it by: `lot L6071A2`. */
export async function subjectTextOf(from: ReadFrom, kind: ScopeKind, id: string): Promise<string> {
  return `${say(`scope-${kind}`)} ${await nameOf(from, kind, id)}`;
}

async function nameOf(from: ReadFrom, kind: ScopeKind, id: string): Promise<string> {
  if (kind === 'dryer-run') return (await dryerRunOf(from, id)).number;
  if (kind === 'hopper-period') return (await hopperOf(from, (await periodOf(from, id)).hopperId)).code;
  return (await subjectById(from, kind, id)).name;
}

/** What bags that are decided on together have in common. */
export function groupText({ origin, code, shift }: BagGroup): string {
  if (shift !== null) {
    return say('group-of-shift', { dryer: code, on: shift.productionOn, shift: shift.shiftCode });
  }
  return origin === 'opening-stock' ? say('bag-opening-stock') : say('group-of-receipt', { receipt: code });
}
