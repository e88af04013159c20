import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { CoderClock } from './coder-clock.entity.js';
import type { SetCoderClockForm } from './machine.form.js';
import { ofSite } from './of-site.js';
import { coderClockAt, coderOf } from './plant-facts.js';
import { insertVersion, settleFactBeginning } from './valid-from.js';

/**
 * A coder's clock was compared with the plant's: from an instant on it is so far ahead.
 * Refusals: `valid-from-not-later`, and those of a time that is set back.
 */
@Injectable()
export class SetCoderClock {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SetCoderClockForm): Promise<{ readonly id: string; readonly validFrom: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const coder = ofSite(asked.actor, 'coder', await coderOf(tx, form.coderId));
      const reason = form.reason ?? null;
      const latest = await latestBeginning(tx, coder.id);
      const beginning = { validFrom: form.validFrom ?? null, reason, now: change.recordedAt, latest };
      const validFrom = settleFactBeginning(beginning);
      const { offsetSeconds, uncertaintySeconds } = form;
      const before = await coderClockAt(tx, coder.id, validFrom);
      const id = this.ids.next();
      await insertVersion(tx, CoderClock, { id, coderId: coder.id, validFrom, offsetSeconds, uncertaintySeconds });
      return {
        answer: { id, validFrom },
        entry: {
          action: 'set-coder-clock',
          subject: { kind: 'coder', id: coder.id },
          touches: [{ kind: 'packing-line', id: coder.lineId }],
          before: { ...before },
          after: { offsetSeconds, uncertaintySeconds, validFrom },
          reason,
          occurredAt: validFrom,
        },
      };
    });
  }
}

async function latestBeginning(tx: Tx, coderId: string): Promise<string | null> {
  const [last] = await tx.sql<{ validFrom: string }>`
    SELECT "valid_from" AS "validFrom" FROM "coder_clock"
    WHERE "coder_id" = ${coderId} AND "voided_by" IS NULL ORDER BY "valid_from" DESC LIMIT 1`;
  return last?.validFrom ?? null;
}
