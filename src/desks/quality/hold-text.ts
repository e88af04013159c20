import type { HoldPart, HoldScope } from '../../disposition/standings.js';
import { dryerRunOf } from '../../drying/dryer-runs.js';
import { periodOf } from '../../hopper/hopper-period-rows.js';
import { dryerOf, hopperOf, lineOf, shiftAt } from '../../plant/plant-facts.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { say } from '../../platform/sentences/sentences.js';
import { subjectById } from '../../tracing/subject-by-id.js';
import type { BagGroup } from './waiting-bags.js';

/** A thing that is held, of a shift with its time. */
type Named = HoldScope & Partial<Pick<HoldPart, 'fromAt'>>;

/** The kind of a thing and the name that people know it by: `lot L6071A2`. */
export async function subjectTextOf(from: ReadFrom, subject: Named): Promise<string> {
  return `${say(`scope-${subject.kind}`)} ${await nameOf(from, subject)}`;
}

async function nameOf(from: ReadFrom, { kind, id, fromAt = null }: Named): Promise<string> {
  switch (kind) {
    case 'dryer-run':
      return (await dryerRunOf(from, id)).number;
    case 'hopper-period':
      return (await hopperOf(from, (await periodOf(from, id)).hopperId)).code;
    case 'dryer-shift':
      return shiftName(from, await dryerOf(from, id), fromAt);
    case 'packing-shift':
      return shiftName(from, await lineOf(from, id), fromAt);
    default:
      return (await subjectById(from, kind, id)).name;
  }
}

async function shiftName(
  from: ReadFrom,
  { siteId, code }: { readonly siteId: string; readonly code: string },
  at: string | null,
): Promise<string> {
  if (at === null) return code;
  const { productionOn, shiftCode } = await shiftAt(from, siteId, at);
  return say('hold-shift-name', { code, on: productionOn, shift: shiftCode });
}

/** What bags that are decided on together have in common. */
export function groupText({ origin, code, shift }: BagGroup): string {
  if (shift !== null) {
    return say('group-of-shift', { dryer: code, on: shift.productionOn, shift: shift.shiftCode });
  }
  return origin === 'opening-stock' ? say('bag-opening-stock') : say('group-of-receipt', { receipt: code });
}
