import { shiftsOfDay } from '../../core/shift-calendar/locate-shift.js';
import { holdNewPath } from '../../disposition/hold-link.js';
import { findRun } from '../../packing/packing-runs.js';
import { shiftAt, shiftPatternAt } from '../../plant/plant-facts.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound, Refusal } from '../../platform/refusal.js';
import { instantOfLocal, NoSuchTime } from '../../platform/web/local-time.js';
import { dryersOf } from '../dryer/dryer-desk.js';
import { linesOf } from '../line-checks/lines-and-formats.js';
import type { HoldNewQuery } from './hold-new.form.js';

/** What a hold of a shift is chosen from. */
export interface ShiftChoices {
  readonly places: readonly {
    readonly value: string;
    readonly kind: 'dryer-shift' | 'packing-shift';
    readonly code: string;
  }[];
  readonly shiftCodes: readonly string[];
  /** The production day that it is now. */
  readonly today: string;
}

export async function shiftChoices(from: ReadFrom, siteId: string, now: Instant): Promise<ShiftChoices> {
  const ofKind = (kind: 'dryer-shift' | 'packing-shift') => (row: { readonly id: string; readonly code: string }) => {
    return { value: `${kind}:${row.id}`, kind, code: row.code };
  };
  const { shifts } = await shiftPatternAt(from, siteId, now);
  return {
    places: [
      ...(await dryersOf(from, siteId)).map(ofKind('dryer-shift')),
      ...(await linesOf(from, siteId)).map(ofKind('packing-shift')),
    ],
    shiftCodes: shifts.map(({ code }) => code),
    today: (await shiftAt(from, siteId, now)).productionOn,
  };
}

const placeKey = /^(dryer-shift|packing-shift):([0-9a-f-]{36})$/;

interface Site {
  readonly siteId: string;
  readonly timeZone: string;
}

/**
 * Where the hold is looked at that a choice of times means; null where none was made.
 *
 * @throws {Refusal} `hold-no-such-shift`, `field-not-local-time`
 * @throws {NotFound} run, or a place that is no dryer and no line
 */
export async function pathOfTimes(from: ReadFrom, site: Site, query: HoldNewQuery): Promise<string | null> {
  const { place = null, run = null, next = null } = query;
  const at = (path: string, { fromAt, untilAt }: { readonly fromAt: Instant; readonly untilAt: Instant }): string =>
    `${path}&fromAt=${fromAt}&untilAt=${untilAt}`;
  if (place !== null) {
    const [, kind, id] = placeKey.exec(place) ?? [];
    if (kind === undefined || id === undefined) throw new NotFound('dryer', place);
    return at(holdNewPath(kind, id, next), await shiftAsked(from, site, query));
  }
  if (run === null) return null;
  const { id } = await findRun(from, site.siteId, run);
  const window = {
    fromAt: instantAsked(query.from ?? '', site.timeZone),
    untilAt: instantAsked(query.until ?? '', site.timeZone),
  };
  return at(holdNewPath('packing-run', id, next), window);
}

async function shiftAsked(
  from: ReadFrom,
  { siteId, timeZone }: Site,
  { on = null, shift = null }: HoldNewQuery,
): Promise<{ readonly fromAt: Instant; readonly untilAt: Instant }> {
  const noon = instantAsked(`${on ?? ''}T12:00`, timeZone);
  const shifts = shiftsOfDay(await shiftPatternAt(from, siteId, noon), timeZone, on ?? '');
  const found = shifts.find(({ shiftCode }) => shiftCode === shift);
  if (found === undefined) throw new Refusal('hold-no-such-shift', { shift, on });
  return { fromAt: found.startsAt, untilAt: found.endsAt };
}

function instantAsked(text: string, timeZone: string): Instant {
  try {
    return instantOfLocal(text, timeZone);
  } catch (error) {
    if (error instanceof NoSuchTime) throw new Refusal('field-not-local-time');
    throw error;
  }
}
