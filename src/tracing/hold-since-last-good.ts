import { Injectable } from '@nestjs/common';
import { placeHold, type HoldDraft } from '../disposition/place-hold.js';
import { openHolds, type HoldRow } from '../disposition/standings.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { lineCheckOf, type LineCheckRow } from '../line-checks/line-checks.js';
import { lockPlan } from '../line-checks/record-check.js';
import type { CountRow } from '../packing/packing-run-rows.js';
import { countsOf } from '../packing/packing-runs.js';
import { possibleRange, timesOfRange } from '../packing/ranges-in-time.js';
import { packsIn, type RunRange } from '../packing/run-ranges.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import { siteOf } from '../plant/plant-facts.js';
import type { HoldSinceLastGoodForm } from './hold.form.js';
import type { PacksAtPlace } from './suspect-places.js';
import { suspectsOfCheck } from './suspects-of-check.js';

/** The holds that were placed; one for each stretch of each run. */
export interface HeldSince {
  readonly checkId: string;
  readonly packCount: number;
  /** The same by where they are; none of a bag. */
  readonly places: readonly PacksAtPlace[];
  readonly holds: readonly HoldRow[];
}

type Wanted = Pick<HoldDraft, 'scope' | 'fromCount' | 'toCount' | 'fromAt' | 'untilAt'>;

/** What is to be held, and how many packs that is by the counts of now; of a bag none. */
interface Missing {
  readonly wanted: readonly Wanted[];
  readonly packCount: number;
  readonly places: readonly PacksAtPlace[];
  readonly lastGoodAt: string | null;
}

/**
 * Somebody holds everything that a failed check makes suspect and that nobody holds yet: the packs since the last good
 * check, or the torn bag. A hold keeps the times of its stretch and so moves with its counts (decision 0023). They are
 * safety holds until a quality officer sets their class; quality lifts them.
 * Refusals: `check-not-failed`, `nothing-packed-since`, `suspects-held-already`; not found: line check.
 */
@Injectable()
export class HoldSinceLastGood {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: HoldSinceLastGoodForm): Promise<HeldSince> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const check = await lineCheckOf(tx, siteId, form.check);
      if (check.passed || check.isVoid) throw new Refusal('check-not-failed', { station: check.station });
      await lockPlan(tx, check.planId);
      const { wanted, packCount, places, lastGoodAt } = await notHeldBy(tx, check, change.recordedAt);
      const reason = await reasonOf(tx, check, lastGoodAt);
      const common = { nextId: () => this.ids.next(), siteId, reason, placedAt: change.recordedAt };
      const holds: HoldRow[] = [];
      for (const part of wanted) holds.push(await placeHold(tx, change, { ...common, ...part }));
      const [first] = holds;
      if (first === undefined) throw new RangeError('nothing was held');
      return {
        answer: { checkId: check.id, packCount, places, holds },
        entry: {
          action: 'place-hold',
          subject: { kind: 'hold', id: first.id },
          touches: [
            ...holds.slice(1).map(({ id }) => ({ kind: 'hold', id })),
            ...[...new Set(wanted.map(({ scope }) => scope))].map(({ kind, id }) => ({ kind, id })),
            { kind: 'line-check', id: check.id },
          ],
          after: {
            checkId: check.id,
            packCount,
            holds: holds.map(({ number, scopeKind, scopeId, fromCount, toCount, fromAt, untilAt }) => {
              return { number, scopeKind, scopeId, fromCount, toCount, fromAt, untilAt };
            }),
          },
          reason,
        },
      };
    });
  }
}

async function notHeldBy(tx: Tx, check: LineCheckRow, now: string): Promise<Missing> {
  if (check.bagId !== null)
    return { wanted: await bagNotHeld(tx, check.bagId), packCount: 0, places: [], lastGoodAt: null };
  const suspects = await suspectsOfCheck(tx, check, now);
  if (suspects.packCount === 0) throw new Refusal('nothing-packed-since', { station: check.station });
  const counts = await countsOf(
    tx,
    suspects.notHeld.map(({ runId }) => runId),
  );
  const wanted = suspects.notHeld.map((range) => stretchOf(range, counts));
  if (wanted.length === 0) throw new Refusal('suspects-held-already', { hold: suspects.holds[0]?.number ?? '' });
  const { notHeld, placesNotHeld: places, lastGood } = suspects;
  return { wanted, packCount: packsIn(notHeld), places, lastGoodAt: lastGood?.occurredAt ?? null };
}

/** A stretch by the times of its counts; by the counts themselves where the times would leave a pack of it out. */
function stretchOf(range: RunRange, ofRuns: readonly CountRow[]): Wanted {
  const { runId, fromCount, toCount } = range;
  const scope = { kind: 'packing-run', id: runId } as const;
  const counts = ofRuns.filter((count) => count.runId === runId);
  const times = timesOfRange(range, counts);
  if (times === null || times.fromAt >= times.untilAt) return { scope, fromCount, toCount };
  const all = { runId, fromCount: 0, toCount: Number.MAX_SAFE_INTEGER };
  const held = possibleRange(all, counts, times);
  const isWhole = held !== null && held.fromCount <= fromCount && held.toCount >= toCount;
  return isWhole ? { scope, ...times } : { scope, fromCount, toCount };
}

async function bagNotHeld(tx: Tx, bagId: string): Promise<readonly Wanted[]> {
  const scope = { kind: 'bulk-bag', id: bagId } as const;
  const [held] = await openHolds(tx, [scope]);
  if (held !== undefined) throw new Refusal('suspects-held-already', { hold: held.number });
  return [{ scope }];
}

/** The reason stands on papers, so it speaks the plant's time. */
async function reasonOf(tx: Tx, check: LineCheckRow, lastGoodAt: string | null): Promise<string> {
  const { timeZone } = await siteOf(tx, check.siteId);
  const facts = { line: check.lineCode, station: check.station, at: localText(check.occurredAt, timeZone) };
  if (check.bagId !== null) return say('held-torn-bag', facts);
  if (lastGoodAt === null) return say('held-since-first', facts);
  return say('held-since-last-good', { ...facts, lastGoodAt: localText(lastGoodAt, timeZone) });
}
