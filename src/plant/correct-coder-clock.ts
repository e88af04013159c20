import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { CoderClock } from './coder-clock.entity.js';
import { clocksOfCoder, clockToCorrect, type ClockToCorrect } from './coder-clocks.js';
import type { CorrectCoderClockForm } from './machine.form.js';
import { insertVersion } from './valid-from.js';

export interface CorrectCoderClockAnswer {
  readonly id: string;
  /** The comparison that stands in its place; null: it was none. */
  readonly clockId: string | null;
}

/**
 * A comparison of a coder's clock was wrong, or was none. What the form leaves out stays as it was. The right one stays
 * between the comparisons before and after it.
 * Refusals: `already-corrected`, `coder-clock-out-of-order`, `time-ahead`.
 */
@Injectable()
export class CorrectCoderClock {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, clockId: string, form: CorrectCoderClockForm): Promise<CorrectCoderClockAnswer> {
    return this.changes.run(asked, { clockId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const old = await clockToCorrect(tx, asked.actor.siteId, clockId);
      const right = form.why === 'incorrect-data' ? corrected(old, form, change.recordedAt) : null;
      if (right !== null) await refuseOutOfOrder(tx, old, right.validFrom);
      await voidFact(tx, CoderClock, clockId, change);
      const id = right === null ? null : this.ids.next();
      if (right !== null && id !== null) await insertVersion(tx, CoderClock, { id, coderId: old.coderId, ...right });
      return {
        answer: { id: clockId, clockId: id },
        entry: {
          action: 'correct-coder-clock',
          subject: { kind: 'coder', id: old.coderId },
          touches: [{ kind: 'packing-line', id: old.lineId }],
          before: { id: clockId, ...readingOf(old) },
          after: { clock: right === null ? null : { id, ...right }, why: form.why },
          reason: form.reason,
        },
      };
    });
  }
}

type Reading = Pick<ClockToCorrect, 'offsetSeconds' | 'uncertaintySeconds' | 'validFrom'>;

function readingOf({ offsetSeconds, uncertaintySeconds, validFrom }: ClockToCorrect): Reading {
  return { offsetSeconds, uncertaintySeconds, validFrom };
}

/** @throws {BadForm} where nothing is said to be otherwise; {Refusal} `time-ahead` */
function corrected(old: ClockToCorrect, form: CorrectCoderClockForm, now: Instant): Reading {
  const right = {
    offsetSeconds: form.offsetSeconds ?? old.offsetSeconds,
    uncertaintySeconds: form.uncertaintySeconds ?? old.uncertaintySeconds,
    validFrom: form.validFrom ?? old.validFrom,
  };
  const isSame =
    right.offsetSeconds === old.offsetSeconds &&
    right.uncertaintySeconds === old.uncertaintySeconds &&
    right.validFrom === old.validFrom;
  if (isSame) throw new BadForm([{ field: 'why', code: 'correction-without-change', facts: {} }]);
  if (right.validFrom > now) throw new Refusal('time-ahead', { stated: right.validFrom, now });
  return right;
}

/** @throws {Refusal} `coder-clock-out-of-order` where it would come to lie beyond another one */
async function refuseOutOfOrder(tx: Tx, old: ClockToCorrect, validFrom: Instant): Promise<void> {
  const others = (await clocksOfCoder(tx, old.coderId)).filter(({ id }) => id !== old.id);
  const low = old.validFrom < validFrom ? old.validFrom : validFrom;
  const high = old.validFrom < validFrom ? validFrom : old.validFrom;
  const between = others.find((other) => other.validFrom >= low && other.validFrom <= high);
  if (between === undefined) return;
  throw new Refusal('coder-clock-out-of-order', { coder: old.coderCode, stated: validFrom, other: between.validFrom });
}
