import { millisecondsBetween, shifted, type Instant } from '../platform/clock.js';
import type { CheckPlanRow } from './check-plan-rows.js';
import type { CheckEvent } from './check-words.js';

const minute = 60_000;

/** A check before a run or a shift begins counts for it when it is at most so long before. Our own value, no source. */
export const aheadMinutes = 15;

/** What has happened on a line that makes checks due. */
export interface DueFacts {
  /** The run that is open; null: nothing is due. */
  readonly run: { readonly formatId: string; readonly startedAt: Instant } | null;
  /** When the shift that runs now began. */
  readonly shiftStartedAt: Instant;
  /** Of the open run, in order. */
  readonly codeChangedAt: readonly Instant[];
  readonly filmFittedAt: readonly Instant[];
}

/** The last check of a plan. */
export interface LastCheck {
  readonly occurredAt: Instant;
  readonly passed: boolean;
}

/** `on-demand`: neither clock nor event asks for it. `idle`: no run is open that it would be due for. */
export type DueWord = 'failed' | 'overdue' | 'due' | 'later' | 'done' | 'on-demand' | 'idle';

export interface DueState {
  readonly word: DueWord;
  /** Null where nothing that has happened or will happen by the clock makes it due. */
  readonly dueAt: Instant | null;
  readonly because: CheckEvent | 'interval' | 'failed' | null;
}

/**
 * Whether a check is due: at once after a failed one and at the plan's events, else when its interval is over since the
 * last good one. Intervals are real minutes: they do not change with the clocks. After a time without a run it is due as
 * the next run begins, where its interval is over by then.
 */
export function dueState(plan: CheckPlanRow, facts: DueFacts, last: LastCheck | null, now: Instant): DueState {
  const { run } = facts;
  if (plan.everyMinutes === null && plan.events.length === 0) return { word: 'on-demand', dueAt: null, because: null };
  if (run === null || (plan.formatId !== null && plan.formatId !== run.formatId)) {
    return { word: 'idle', dueAt: null, because: null };
  }
  if (last?.passed === false) return { word: 'failed', dueAt: last.occurredAt, because: 'failed' };
  const wants = [
    ...intervalEnds(plan, run.startedAt, last),
    ...plan.events.flatMap((event) => eventsUnanswered(event, facts, run.startedAt, last)),
  ].map((want) => ({ ...want, at: later(want.at, plan.firstValidFrom) }));
  const [first] = wants.sort((one, other) => (one.at < other.at ? -1 : 1));
  if (first === undefined) return { word: 'done', dueAt: null, because: null };
  const word = first.at > now ? 'later' : overdueAt(first.at, plan) <= now ? 'overdue' : 'due';
  return { word, dueAt: first.at, because: first.because };
}

/** From this instant on a check that is due counts as overdue. */
export function overdueAt(dueAt: Instant, plan: Pick<CheckPlanRow, 'graceMinutes'>): Instant {
  return shifted(dueAt, plan.graceMinutes * minute);
}

/** Whole minutes until it is due, negative once it is. */
export function minutesUntil(dueAt: Instant, now: Instant): number {
  return Math.floor(millisecondsBetween(now, dueAt) / minute);
}

interface Want {
  readonly at: Instant;
  readonly because: CheckEvent | 'interval';
}

function intervalEnds({ everyMinutes }: CheckPlanRow, runStartedAt: Instant, last: LastCheck | null): Want[] {
  if (everyMinutes === null) return [];
  const at = last === null ? runStartedAt : later(shifted(last.occurredAt, everyMinutes * minute), runStartedAt);
  return [{ at, because: 'interval' }];
}

function eventsUnanswered(because: CheckEvent, facts: DueFacts, runStartedAt: Instant, last: LastCheck | null): Want[] {
  const checkedAt = last?.occurredAt ?? '';
  switch (because) {
    case 'run-start':
      return checkedAt >= ahead(runStartedAt) ? [] : [{ at: runStartedAt, because }];
    case 'shift-start':
      return checkedAt >= ahead(facts.shiftStartedAt)
        ? []
        : [{ at: later(facts.shiftStartedAt, runStartedAt), because }];
    case 'code-change':
      return facts.codeChangedAt.filter((at) => at > checkedAt).map((at) => ({ at, because }));
    case 'film-change':
      return facts.filmFittedAt.filter((at) => at > checkedAt).map((at) => ({ at, because }));
  }
}

function ahead(at: Instant): Instant {
  return shifted(at, -aheadMinutes * minute);
}

function later(one: Instant, other: Instant): Instant {
  return one > other ? one : other;
}
