import { Injectable } from '@nestjs/common';
import { problemsOfShiftPattern } from '../core/shift-calendar/shift-pattern-problems.js';
import type { Rota, ShiftPattern } from '../core/shift-calendar/shift-pattern.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { canonicalText } from '../platform/canonical-text.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { siteOf } from './plant-facts.js';
import type { SetShiftPatternForm } from './rules.form.js';
import { ShiftPatternVersion } from './shift-pattern.entity.js';
import { insertVersion, settleRuleBeginning } from './valid-from.js';

/**
 * The shifts of a site from an instant on, with crews or without. They start with the site's production day.
 * Refusals: each problem of core/shift-calendar under its own code, `rota-start-missing`, `valid-from-not-later`,
 * `valid-from-in-the-past`.
 */
@Injectable()
export class SetShiftPattern {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SetShiftPatternForm): Promise<{ readonly id: string; readonly validFrom: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const { productionDayStart } = await siteOf(tx, siteId);
      const pattern: ShiftPattern = { productionDayStart, shifts: form.shifts.map(shiftOf), rota: rotaOf(form) };
      const [problem] = problemsOfShiftPattern(pattern);
      if (problem !== undefined) throw new Refusal(problem, { productionDayStart });
      const latest = await latestBeginning(tx, siteId);
      const beginning = { validFrom: form.validFrom ?? null, reason: null, now: change.recordedAt, latest };
      const validFrom = settleRuleBeginning(beginning);
      const id = this.ids.next();
      const text = textOf(pattern);
      await insertVersion(tx, ShiftPatternVersion, { id, siteId, validFrom, pattern: text });
      return {
        answer: { id, validFrom },
        entry: {
          action: 'set-shift-pattern',
          subject: { kind: 'site', id: siteId },
          after: { shiftPatternId: id, validFrom, pattern: text },
        },
      };
    });
  }
}

function shiftOf({ code, name, startTime }: SetShiftPatternForm['shifts'][number]) {
  return { code, name, startTime };
}

function rotaOf(form: SetShiftPatternForm): Rota | null {
  const crews = form.crews ?? [];
  if (crews.length === 0) return null;
  if (!form.rotaStartsOn) throw new Refusal('rota-start-missing');
  return { startsOn: form.rotaStartsOn, crews: crews.map(({ crew, cycle }) => ({ crew, shiftCodes: daysOf(cycle) })) };
}

function daysOf(cycle: string): (string | null)[] {
  return cycle.split(/ +/).map((word) => (word === '-' ? null : word));
}

function textOf({ productionDayStart, shifts, rota }: ShiftPattern): string {
  const crews = rota?.crews.map(({ crew, shiftCodes }) => ({ crew, shiftCodes: [...shiftCodes] })) ?? [];
  return canonicalText({
    productionDayStart,
    shifts: shifts.map((shift) => ({ ...shift })),
    rota: rota === null ? null : { startsOn: rota.startsOn, crews },
  });
}

async function latestBeginning(tx: Tx, siteId: string): Promise<string | null> {
  const [last] = await tx.sql<{ validFrom: string }>`
    SELECT "valid_from" AS "validFrom" FROM "shift_pattern"
    WHERE "site_id" = ${siteId} AND "voided_by" IS NULL ORDER BY "valid_from" DESC LIMIT 1`;
  return last?.validFrom ?? null;
}
