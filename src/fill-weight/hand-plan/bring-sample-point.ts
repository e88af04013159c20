import { openPointIdOf } from '../../open-points/open-points.js';
import { clearPoints, raisePoint } from '../../open-points/raise-point.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { lineOf } from '../../plant/plant-facts.js';
import { dueHandSample } from './due-hand-sample.js';

const cause = 'hand-sample-overdue';

interface Bringing {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly lineId: string;
  readonly personId: string | null;
  readonly at: Instant;
}

/** Raises or clears the point of a line's hand sample, so that it says what is so. */
export async function bringSamplePoint(tx: Tx, { nextId, siteId, lineId, personId, at }: Bringing): Promise<boolean> {
  const due = await dueHandSample(tx, lineId, at);
  const subject = { kind: 'packing-line', id: lineId };
  if (due?.word !== 'overdue') {
    await clearPoints(tx, { nextId, siteId, cause, subject, personId, at });
    return false;
  }
  const { code } = await lineOf(tx, lineId);
  const facts = { line: code, count: due.plan.packCount, at: due.dueAt };
  await raisePoint(tx, { id: nextId(), siteId, cause, facts, subject, role: 'line-lead', at });
  return true;
}

/** Whether the point of a line says already what is so. */
export async function samplePointSaysSo(
  from: ReadFrom,
  { siteId, lineId, at }: Pick<Bringing, 'siteId' | 'lineId' | 'at'>,
): Promise<boolean> {
  const due = await dueHandSample(from, lineId, at);
  const open = await openPointIdOf(from, { siteId, cause, subject: { kind: 'packing-line', id: lineId } });
  return (open !== null) === (due?.word === 'overdue');
}
