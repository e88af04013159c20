import { Injectable } from '@nestjs/common';
import { placeHold, type HoldDraft } from '../disposition/place-hold.js';
import { openHolds, type HoldRow } from '../disposition/standings.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { lockPlan } from '../line-checks/check-line.js';
import { lineCheckOf, type LineCheckRow } from '../line-checks/line-checks.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import { siteOf } from '../plant/plant-facts.js';
import type { HoldSinceLastGoodForm } from './hold.form.js';
import { suspectsOfCheck } from './suspects-of-check.js';

/** The holds that were placed; one for each stretch of each run. */
export interface HeldSince {
  readonly checkId: string;
  readonly packCount: number;
  readonly holds: readonly HoldRow[];
}

type Wanted = Pick<HoldDraft, 'scope' | 'fromCount' | 'toCount'>;

/**
 * Somebody holds everything that a failed check makes suspect and that nobody holds yet: the packs since the last good
 * check, or the torn bag. They are safety holds until a quality officer sets their class; quality lifts them.
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
      const { wanted, lastGoodAt } = await notHeldBy(tx, check, change.recordedAt);
      const reason = await reasonOf(tx, check, lastGoodAt);
      const common = { nextId: () => this.ids.next(), siteId, reason, placedAt: change.recordedAt };
      const holds: HoldRow[] = [];
      for (const part of wanted) holds.push(await placeHold(tx, change, { ...common, ...part }));
      const [first] = holds;
      if (first === undefined) throw new RangeError('nothing was held');
      const packCount = holds.reduce((sum, hold) => sum + ((hold.toCount ?? 0) - (hold.fromCount ?? 0)), 0);
      return {
        answer: { checkId: check.id, packCount, holds },
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
            holds: holds.map(({ number, scopeKind, scopeId, fromCount, toCount }) => {
              return { number, scopeKind, scopeId, fromCount, toCount };
            }),
          },
          reason,
        },
      };
    });
  }
}

async function notHeldBy(
  tx: Tx,
  check: LineCheckRow,
  now: string,
): Promise<{ readonly wanted: readonly Wanted[]; readonly lastGoodAt: string | null }> {
  if (check.bagId !== null) return { wanted: await bagNotHeld(tx, check.bagId), lastGoodAt: null };
  const suspects = await suspectsOfCheck(tx, check, now);
  if (suspects.packCount === 0) throw new Refusal('nothing-packed-since', { station: check.station });
  const wanted = suspects.notHeld.map(({ runId, fromCount, toCount }) => {
    return { scope: { kind: 'packing-run', id: runId } as const, fromCount, toCount };
  });
  if (wanted.length === 0) throw new Refusal('suspects-held-already', { hold: suspects.holds[0]?.number ?? '' });
  return { wanted, lastGoodAt: suspects.lastGood?.occurredAt ?? null };
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
