import { millisecondsBetween, shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { findRun } from '../packing/packing-runs.js';
import { shiftAt } from '../plant/plant-facts.js';
import type { AccountSpan } from './account-view.js';
import type { AccountSpanForm } from './account.form.js';

/** A month and a bit: longer accounts say nothing that several would not say better. Our own value, no source. */
const longestDays = 35;

/**
 * The time that an account is asked for: as stated; from a run's start to its close; the shift that holds an instant;
 * else the last production shift that has ended.
 *
 * @throws {Refusal} `run-still-open`
 * @throws {BadForm} where the time is stated by half, twice, turned round or too long
 */
export async function settleSpan(
  from: ReadFrom,
  siteId: string,
  form: AccountSpanForm,
  now: Instant,
): Promise<AccountSpan> {
  const time = await statedTime(from, siteId, form, now);
  if (time.fromAt >= time.untilAt) throw wrong('untilAt', 'account-time-turned');
  if (millisecondsBetween(time.fromAt, time.untilAt) > longestDays * 86_400_000) {
    throw wrong('untilAt', 'account-time-too-long');
  }
  return { hopperId: form.hopper, ...time };
}

type Time = Omit<AccountSpan, 'hopperId'>;

async function statedTime(from: ReadFrom, siteId: string, form: AccountSpanForm, now: Instant): Promise<Time> {
  const { fromAt = null, untilAt = null, run = null, shiftAt: instantOfShift = null } = form;
  const ways = [fromAt ?? untilAt, run, instantOfShift].filter((way) => way !== null);
  if (ways.length > 1) throw wrong('untilAt', 'account-time-stated-twice');
  if (run !== null) return timeOfRun(from, siteId, run);
  if (instantOfShift !== null) return timeOfShift(from, siteId, instantOfShift);
  if (fromAt === null && untilAt === null) return lastShiftBefore(from, siteId, now);
  if (fromAt === null) throw wrong('fromAt', 'field-missing');
  if (untilAt === null) throw wrong('untilAt', 'field-missing');
  return { fromAt, untilAt };
}

async function timeOfRun(from: ReadFrom, siteId: string, asked: string): Promise<Time> {
  const run = await findRun(from, siteId, asked);
  if (run.closedAt === null) throw new Refusal('run-still-open', { run: run.number });
  return { fromAt: run.startedAt, untilAt: run.closedAt };
}

async function timeOfShift(from: ReadFrom, siteId: string, at: Instant): Promise<Time> {
  const { startsAt, endsAt } = await shiftAt(from, siteId, at);
  return { fromAt: startsAt, untilAt: endsAt };
}

async function lastShiftBefore(from: ReadFrom, siteId: string, now: Instant): Promise<Time> {
  const { startsAt } = await shiftAt(from, siteId, now);
  return timeOfShift(from, siteId, shifted(startsAt, -1));
}

function wrong(field: string, code: string): BadForm {
  return new BadForm([{ field, code, facts: { days: longestDays } }]);
}
