import { checksOfLineBetween } from '../line-checks/line-checks.js';
import { planAt } from '../line-checks/check-plans.js';
import { runOf } from '../packing/packing-runs.js';
import { millisecondsBetween, shifted } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import type { Signal, SignalsAsked } from './signal.js';

/** Checks that come later than this after the packs say nothing about them. Our own choice. */
const afterMilliseconds = 24 * 3_600_000;

type Check = Awaited<ReturnType<typeof checksOfLineBetween>>[number];

/** The line checks around the packs: failed ones, and how long the line ran between two of the same plan. */
export async function checkSignals(from: ReadFrom, asked: SignalsAsked): Promise<readonly Signal[]> {
  const { thread, window, periodFromAt, siteId } = asked;
  const runIds = [...new Set(thread.packed.map(({ runId }) => runId))];
  const runs = await Promise.all(runIds.map((runId) => runOf(from, runId)));
  const signals: Signal[] = [];
  for (const lineId of new Set(runs.map((run) => run.lineId))) {
    const checks = await checksOfLineBetween(from, lineId, periodFromAt, shifted(window.untilAt, afterMilliseconds));
    for (const [planId, own] of groupBy(checks, (check) => check.planId)) {
      const plan = await planAt(from, siteId, planId, window.fromAt);
      const most = plan.everyMinutes === null ? null : plan.everyMinutes + plan.graceMinutes;
      signals.push(...signalsOfPlan(own, asked, most));
    }
  }
  return signals;
}

function signalsOfPlan(
  checks: readonly Check[],
  { window }: SignalsAsked,
  mostMinutes: number | null,
): readonly Signal[] {
  const before = checks.filter(({ occurredAt }) => occurredAt <= window.fromAt).at(-1);
  const after = checks.find(({ occurredAt }) => occurredAt >= window.untilAt);
  const within = checks.filter(({ occurredAt }) => occurredAt > window.fromAt && occurredAt < window.untilAt);
  const around = [before, ...within, after].filter((check) => check !== undefined);
  const [first] = around;
  if (first === undefined) return [];
  const failed = around.filter(({ passed }) => !passed);
  const shown = failed[0] ?? first;
  const result: Signal = {
    ...{ code: 'stand-out-checks', facts: { station: first.station, count: around.length } },
    ...{ unit: 'failed', href: `/checks/${shown.id}`, tail: 'upper', most: 0 },
    value: failed.length,
    reference: checks.map(({ passed }) => (passed ? 0 : 1)),
  };
  if (before === undefined || after === undefined || within.length > 0) return [result];
  const gap: Signal = {
    ...{
      code: 'stand-out-check-gap',
      facts: { station: first.station, from: before.occurredAt, until: after.occurredAt },
    },
    ...{ unit: 'minutes', href: `/checks/${after.id}`, tail: 'upper', most: mostMinutes },
    value: minutesBetween(before, after),
    reference: checks.slice(1).map((check, place) => minutesBetween(checks[place] ?? check, check)),
  };
  return [result, gap];
}

function minutesBetween(one: Check, other: Check): number {
  return Math.round(millisecondsBetween(one.occurredAt, other.occurredAt) / 60_000);
}
