import { rankByUnusual, unusualness, type Unusualness } from '../core/statistics/unusual.js';
import { runSpans } from '../packing/run-lists.js';
import type { TimeWindow } from '../packing/ranges-in-time.js';
import { shifted } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Thread } from '../tracing/thread.js';
import { bagSignals } from './bag-signals.js';
import { checkSignals } from './check-signals.js';
import { lineSignals } from './line-signals.js';
import { recordSignals } from './record-signals.js';
import { weightSignals } from './weight-signals.js';
import { periodDays, type Signal, type SignalsAsked } from './signal.js';

/** Something in the records about the packs of a complaint, judged: how unusual it is for this plant in this period. */
export interface StandOut extends Omit<Signal, 'reference'>, Unusualness {}

/**
 * Everything in the records that touches the packs of a thread, the most unusual first; what is usual is there too, and
 * is said to be. Null where it is not known when they were packed. Nothing is there that no record shows.
 */
export async function standsOut(from: ReadFrom, siteId: string, thread: Thread): Promise<readonly StandOut[] | null> {
  const window = windowOf(thread);
  if (window === null) return null;
  const periodFromAt = shifted(window.untilAt, -periodDays * 86_400_000);
  const runs = await runSpans(from, siteId, periodFromAt, window.untilAt);
  const asked: SignalsAsked = { siteId, thread, window, periodFromAt, runs };
  const signals = [
    ...(await bagSignals(from, asked)),
    ...(await lineSignals(from, asked)),
    ...(await weightSignals(from, asked)),
    ...(await checkSignals(from, asked)),
    ...(await recordSignals(from, asked)),
  ];
  return rankByUnusual(
    signals.map(({ reference, ...signal }) => ({ ...signal, ...unusualness({ ...signal, reference }) })),
  );
}

function windowOf({ packed }: Thread): TimeWindow | null {
  const times = packed.flatMap(({ when }) => when ?? []);
  const fromAt = times.map((time) => time.fromAt).sort()[0];
  const untilAt = times
    .map((time) => time.untilAt)
    .sort()
    .at(-1);
  return fromAt === undefined || untilAt === undefined ? null : { fromAt, untilAt };
}
