import { Injectable } from '@nestjs/common';
import { findBag } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleFactBeginning } from '../plant/valid-from.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import type { RecordTrialForm, TrialSampleForm } from './flow-model.form.js';
import { takeHopper } from './take-period.js';
import { TracerSample } from './tracer-sample.entity.js';
import { TracerTrial } from './tracer-trial.entity.js';

export interface TrialAnswer {
  readonly id: string;
  readonly number: number;
}

/** Where a sample was taken, in grams since the second bag began to go in. */
type Placed = Pick<TracerSample, 'fromGrams' | 'toGrams' | 'colourIu'>;

/**
 * A tracer trial was made on a hopper. It is recorded whatever it says: one that tells nothing has been made too.
 * Refusals: `trial-of-one-bag`, those of a time ahead; not found: hopper, bag. Each sample is placed by kilograms, or by
 * its pack's number.
 */
@Injectable()
export class RecordTrial {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, hopperId: string, form: RecordTrialForm): Promise<TrialAnswer> {
    return this.changes.run(asked, { hopperId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const hopper = await takeHopper(tx, siteId, hopperId);
      const samples = placedSamples(form);
      const [before, after] = [await findBag(tx, siteId, form.beforeBag), await findBag(tx, siteId, form.afterBag)];
      if (before.id === after.id) throw new Refusal('trial-of-one-bag', { bag: before.number });
      const reason = form.reason ?? null;
      const stated = { validFrom: form.madeAt ?? null, reason, now: change.recordedAt, latest: null };
      const madeAt = settleFactBeginning(stated);
      const { beforeColourIu, afterColourIu, standardIu } = form;
      const [id, number] = [this.ids.next(), await nextNumber(tx, hopper.id)];
      const colours = { beforeColourIu, afterColourIu, standardIu };
      const places = { packGrams: form.packGrams ?? null, insideGrams: form.insideGrams ?? null };
      await tx.insert(TracerTrial, {
        ...{ id, hopperId: hopper.id, number, beforeBagId: before.id, afterBagId: after.id, ...colours, ...places },
        ...{ note: form.note ?? null, madeAt, personId, voidedBy: null },
      });
      for (const sample of samples) {
        await tx.insert(TracerSample, { id: this.ids.next(), trialId: id, ...sample, voidedBy: null });
      }
      return {
        answer: { id, number },
        entry: {
          action: 'record-tracer-trial',
          subject: { kind: 'hopper', id: hopper.id },
          touches: [
            { kind: 'tracer-trial', id },
            { kind: 'bulk-bag', id: before.id },
            { kind: 'bulk-bag', id: after.id },
          ],
          after: { trial: id, number, ...colours, ...places, samples: samples.map((sample) => ({ ...sample })) },
          reason,
          occurredAt: madeAt,
        },
      };
    });
  }
}

/** Withdrawn trials keep their numbers. */
async function nextNumber(tx: Tx, hopperId: string): Promise<number> {
  const [last] = await tx.sql<{ number: number | string | null }>`
    SELECT MAX("number") AS "number" FROM "tracer_trial" WHERE "hopper_id" = ${hopperId}`;
  return Number(last?.number ?? 0) + 1;
}

/** By rising grams. @throws {BadForm} */
function placedSamples({ samples, packGrams }: RecordTrialForm): readonly Placed[] {
  const placed = samples.map((sample, place) => {
    const code = problemOf(sample, packGrams ?? null);
    if (code !== null) throw new BadForm([{ field: `samples.${place}`, code, facts: {} }]);
    return placedSample(sample, packGrams ?? 0);
  });
  return placed.sort((a, b) => a.fromGrams - b.fromGrams || a.toGrams - b.toGrams);
}

function problemOf({ atGrams, packNumber }: TrialSampleForm, packGrams: number | null): string | null {
  if ((atGrams == null) === (packNumber == null)) return 'trial-place';
  return packNumber != null && packGrams === null ? 'trial-pack-grams-missing' : null;
}

/** A pack is all that left while it was filled. */
function placedSample({ atGrams, packNumber, colourIu }: TrialSampleForm, packGrams: number): Placed {
  if (packNumber == null) return { fromGrams: atGrams ?? 0, toGrams: atGrams ?? 0, colourIu };
  return { fromGrams: (packNumber - 1) * packGrams, toGrams: packNumber * packGrams, colourIu };
}
