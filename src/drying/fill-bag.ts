import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { addBag, refuseOutsideRun } from './add-bag.js';
import type { FillBagForm } from './bag-fill.form.js';
import type { ClosedBag } from './close-bag.js';
import { closeFilledBag } from './close-filled-bag.js';
import { findDryerRun, type DryerRunRow } from './dryer-runs.js';
import { latenessReason } from './lateness-reason.js';

/**
 * Start and end of a filling in one message, as devices send it.
 * Refusals: those of `StartBag` and `CloseBag`.
 */
@Injectable()
export class FillBag {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: FillBagForm): Promise<ClosedBag> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = latenessReason(form);
      const { occurredAt, statedAt } = settleOccurredAt(form.filledAt ?? null, change.recordedAt, reason);
      const run = await findDryerRun(tx, asked.actor.siteId, form.run);
      const times = { startedAt: form.startedAt ?? occurredAt, filledAt: occurredAt };
      refuseOutsideRun(run, times.startedAt);
      const answer = await this.fill(tx, run, form, { ...times, personId: asked.actor.personId });
      const { grossGrams, tareGrams, isPresetTare, scaleId, safeLoadGrams } = form;
      const { number, sscc, netGrams, isDoubtful } = answer;
      return {
        answer,
        entry: {
          action: 'fill-bag',
          subject: { kind: 'bulk-bag', id: answer.id },
          touches: [
            { kind: 'dryer-run', id: run.id },
            { kind: 'scale', id: scaleId },
          ],
          after: {
            ...{ number, sscc, dryerRunId: run.id, safeLoadGrams, ...times },
            ...{ grossGrams, tareGrams, netGrams, isPresetTare, scaleId, isDoubtful },
          },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async fill(
    tx: Tx,
    run: DryerRunRow,
    form: FillBagForm,
    when: { readonly startedAt: string; readonly filledAt: string; readonly personId: string | null },
  ): Promise<ClosedBag> {
    const bag = { id: this.ids.next(), siteId: run.siteId };
    const { number, sscc } = await addBag(tx, {
      ...bag,
      origin: 'dryer-run',
      dryerRunId: run.id,
      receiptId: null,
      intendedGradeId: run.gradeId,
      linerLot: form.linerLot ?? null,
      safeLoadGrams: form.safeLoadGrams,
      fillStartedAt: when.startedAt,
      sscc: null,
    });
    const { grossGrams, tareGrams, isPresetTare, scaleId } = form;
    const { netGrams, isDoubtful } = await closeFilledBag(tx, {
      nextId: () => this.ids.next(),
      siteId: bag.siteId,
      bagId: bag.id,
      bagNumber: number,
      fillStartedAt: when.startedAt,
      ...{ grossGrams, tareGrams, isPresetTare, scaleId },
      placeId: form.placeId ?? null,
      filledAt: when.filledAt,
      personId: when.personId,
      hasHappened: form.happened ?? false,
    });
    return { id: bag.id, number, sscc, netGrams, isDoubtful };
  }
}
