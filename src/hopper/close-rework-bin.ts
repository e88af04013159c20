import { Injectable } from '@nestjs/common';
import { localMomentAt } from '../core/shift-calendar/local-time.js';
import { meanNetsOf } from '../fill-weight/mean-nets.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { findRun } from '../packing/packing-runs.js';
import { scaleStandingAt, siteOf } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import { takeNumber } from '../platform/database/number-series.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import type { BinContent, CloseReworkBinForm } from './hopper.form.js';
import { makeBinNumber } from './rework-bin-number.js';
import { ReworkBin } from './rework-bin.entity.js';
import { ReworkParent } from './rework-parent.entity.js';
import type { RunRange } from './run-range.js';

export interface ReworkBinAnswer {
  readonly id: string;
  readonly number: string;
  readonly content: ReworkBin['content'];
  readonly netGrams: number;
  readonly closedAt: Instant;
}

/**
 * A bin of opened packs or machine rejects is closed, with the packs that it came from.
 * Refusals: `content-never-rework`, `range-not-counted`, `bin-heavier-than-its-packs`, `scale-has-failed`, those of the time.
 */
@Injectable()
export class CloseReworkBin {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: CloseReworkBinForm): Promise<ReworkBinAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const settled = settleOccurredAt(form.closedAt ?? null, change.recordedAt, form.reason ?? null);
      const { occurredAt: closedAt, statedAt } = settled;
      const content = refuseNeverRework(form.content);
      const scaleId = form.scaleId ?? null;
      if (scaleId !== null) await refuseUselessScale(tx, { siteId, scaleId, at: closedAt });
      const parents = await parentsOf(tx, siteId, form);
      if (content === 'opened-packs') await refuseHeavier(tx, parents, form.netGrams);
      const id = this.ids.next();
      const number = await takeBinNumber(tx, siteId, closedAt);
      const { netGrams } = form;
      await tx.insert(ReworkBin, { id, siteId, number, content, netGrams, scaleId, closedAt, voidedBy: null });
      await tx.insert(
        ReworkParent,
        parents.map((range) => ({ id: this.ids.next(), binId: id, ...range, voidedBy: null })),
      );
      return {
        answer: { id, number, content, netGrams, closedAt },
        entry: {
          action: 'close-rework-bin',
          subject: { kind: 'rework-bin', id },
          touches: [...new Set(parents.map(({ runId }) => runId))].map((runId) => ({ kind: 'packing-run', id: runId })),
          after: { number, content, netGrams, scaleId, parents: parents.map((range) => ({ ...range })) },
          reason: form.reason ?? null,
          occurredAt: closedAt,
          statedAt,
        },
      };
    });
  }
}

/** Metal rejects, floor sweepings, trade returns and unknown product are never rework, whoever decides. */
function refuseNeverRework(content: BinContent): ReworkBin['content'] {
  switch (content) {
    case 'opened-packs':
    case 'weight-rejects':
    case 'start-up-packs':
      return content;
    default:
      throw new Refusal('content-never-rework', { content });
  }
}

async function refuseUselessScale(
  tx: Tx,
  { siteId, scaleId, at }: { readonly siteId: string; readonly scaleId: string; readonly at: Instant },
): Promise<void> {
  const { scale, hasFailed } = await scaleStandingAt(tx, scaleId, at);
  if (scale.siteId !== siteId) throw new NotFound('scale', scaleId);
  if (hasFailed) throw new Refusal('scale-has-failed', { scale: scale.code });
}

async function parentsOf(tx: Tx, siteId: string, form: CloseReworkBinForm): Promise<readonly RunRange[]> {
  const ranges: RunRange[] = [];
  for (const { run, fromCount, toCount } of form.parents) {
    const { id: runId, number, packCount } = await findRun(tx, siteId, run);
    if (fromCount >= toCount || toCount > packCount) {
      throw new Refusal('range-not-counted', { run: number, fromCount, toCount, packCount });
    }
    ranges.push({ runId, fromCount, toCount });
  }
  return ranges;
}

/** Opened packs weigh what such packs weigh at most, and a twentieth for the scale and single heavy ones (our own value). */
async function refuseHeavier(tx: Tx, parents: readonly RunRange[], netGrams: number): Promise<void> {
  const means = await meanNetsOf(tx, [...new Set(parents.map(({ runId }) => runId))]);
  const mostMilligrams = parents.reduce(
    (sum, { runId, fromCount, toCount }) => sum + (toCount - fromCount) * (means.get(runId)?.upperMilligrams ?? 0),
    0,
  );
  const mostGrams = Math.ceil((mostMilligrams * 1.05) / 1000);
  if (netGrams > mostGrams) throw new Refusal('bin-heavier-than-its-packs', { netGrams, mostGrams });
}

async function takeBinNumber(tx: Tx, siteId: string, at: Instant): Promise<string> {
  const { timeZone } = await siteOf(tx, siteId);
  const year = Number(localMomentAt(timeZone, at).on.slice(0, 4));
  return makeBinNumber(year, await takeNumber(tx, siteId, `rework-bin-${year}`));
}
