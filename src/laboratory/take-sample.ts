import { Injectable } from '@nestjs/common';
import { findBag } from '../drying/bulk-bags.js';
import { takeDocumentNumber } from '../drying/take-document-number.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { dryerOf, shiftAt } from '../plant/plant-facts.js';
import { shifted } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import type { SampleCover } from './sample-cover.js';
import { Sample } from './sample.entity.js';
import type { TakeSampleForm } from './sample.form.js';

const hourMilliseconds = 3_600_000;

export interface TakenSample extends SampleCover {
  readonly id: string;
  readonly number: string;
}

/**
 * A sample is taken; it stands for a bag, an hour of a dryer, or a shift's composite of a dryer.
 * Refusals: `sample-before-its-time`; bad form where bag or dryer and time are missing or where
 * both are given; not found: bulk-bag, dryer.
 */
@Injectable()
export class TakeSample {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: TakeSampleForm): Promise<TakenSample> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.takenAt ?? null, change.recordedAt, reason);
      const { siteId } = asked.actor;
      const cover = await coverOf(tx, siteId, form);
      if (cover.fromAt !== null && occurredAt < cover.fromAt) {
        throw new Refusal('sample-before-its-time', { fromAt: cover.fromAt, takenAt: occurredAt });
      }
      const id = this.ids.next();
      const number = await takeDocumentNumber(tx, siteId, 'sample', change.recordedAt);
      const { standsFor } = form;
      await tx.insert(Sample, { id, siteId, number, standsFor, ...cover, takenAt: occurredAt, voidedBy: null });
      return {
        answer: { id, number, ...cover },
        entry: {
          action: 'take-sample',
          subject: { kind: 'sample', id },
          touches: touchedBy(cover),
          after: { number, standsFor, ...cover },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

function touchedBy({ bagId, dryerId }: SampleCover): { kind: string; id: string }[] {
  if (bagId !== null) return [{ kind: 'bulk-bag', id: bagId }];
  return dryerId === null ? [] : [{ kind: 'dryer', id: dryerId }];
}

async function coverOf(tx: Tx, siteId: string, form: TakeSampleForm): Promise<SampleCover> {
  if (form.standsFor === 'bag') {
    refuseGiven({ dryerId: form.dryerId, fromAt: form.fromAt });
    const bag = await findBag(tx, siteId, given('bag', form.bag));
    return { bagId: bag.id, dryerId: null, fromAt: null, untilAt: null };
  }
  refuseGiven({ bag: form.bag });
  const dryer = await dryerOf(tx, given('dryerId', form.dryerId));
  const fromAt = given('fromAt', form.fromAt);
  if (form.standsFor === 'hour') {
    return { bagId: null, dryerId: dryer.id, fromAt, untilAt: shifted(fromAt, hourMilliseconds) };
  }
  const { startsAt, endsAt } = await shiftAt(tx, siteId, fromAt);
  return { bagId: null, dryerId: dryer.id, fromAt: startsAt, untilAt: endsAt };
}

/** What says something else than what the sample stands for is not dropped in silence: one of the two is a mistake. */
function refuseGiven(fields: Readonly<Record<string, string | null | undefined>>): void {
  const tooMuch = Object.entries(fields).filter(([, value]) => value !== null && value !== undefined);
  if (tooMuch.length === 0) return;
  throw new BadForm(tooMuch.map(([field]) => ({ field, code: 'not-of-this-sample', facts: {} })));
}

function given(field: string, value: string | null | undefined): string {
  if (value === null || value === undefined) throw new BadForm([{ field, code: 'field-missing', facts: {} }]);
  return value;
}
