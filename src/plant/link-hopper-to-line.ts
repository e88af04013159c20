import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { HopperLine } from './hopper-line.entity.js';
import type { LinkHopperToLineForm } from './machine.form.js';
import { ofSite } from './of-site.js';
import { hopperOf, lineOf } from './plant-facts.js';
import { insertVersion, settleFactBeginning } from './valid-from.js';

/**
 * From an instant on a line is fed by a hopper, or by none.
 * Refusals: `hopper-feeds-line-already`, `valid-from-not-later`, and those of a time that is set back.
 */
@Injectable()
export class LinkHopperToLine {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: LinkHopperToLineForm): Promise<{ readonly id: string; readonly validFrom: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const line = ofSite(asked.actor, 'packing-line', await lineOf(tx, form.lineId));
      const hopperId = form.hopperId ?? null;
      if (hopperId !== null) ofSite(asked.actor, 'hopper', await hopperOf(tx, hopperId));
      const last = await lastLink(tx, line.id);
      if ((last?.hopperId ?? null) === hopperId) throw new Refusal('hopper-feeds-line-already', { line: line.code });
      const reason = form.reason ?? null;
      const beginning = { validFrom: form.validFrom ?? null, reason, now: change.recordedAt };
      const validFrom = settleFactBeginning({ ...beginning, latest: last?.validFrom ?? null });
      const id = this.ids.next();
      await insertVersion(tx, HopperLine, { id, siteId, lineId: line.id, hopperId, validFrom });
      const hoppers = [last?.hopperId ?? null, hopperId].filter((one) => one !== null);
      return {
        answer: { id, validFrom },
        entry: {
          action: 'link-hopper-to-line',
          subject: { kind: 'packing-line', id: line.id },
          touches: hoppers.map((one) => ({ kind: 'hopper', id: one })),
          before: { hopperId: last?.hopperId ?? null },
          after: { hopperId, validFrom },
          reason,
          occurredAt: validFrom,
        },
      };
    });
  }
}

async function lastLink(tx: Tx, lineId: string): Promise<{ hopperId: string | null; validFrom: string } | null> {
  const [last] = await tx.sql<{ hopperId: string | null; validFrom: string }>`
    SELECT "hopper_id" AS "hopperId", "valid_from" AS "validFrom" FROM "hopper_line"
    WHERE "line_id" = ${lineId} AND "voided_by" IS NULL ORDER BY "valid_from" DESC LIMIT 1`;
  return last ?? null;
}
