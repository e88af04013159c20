import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { refuseContradiction, voidFact } from '../../journal/void-fact.js';
import { runOfLineAt } from '../../packing/packing-runs.js';
import type { Instant } from '../../platform/clock.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { Ids } from '../../platform/ids.js';
import { BadForm, Refusal } from '../../platform/refusal.js';
import { formatOf } from '../../plant/plant-facts.js';
import { addLineSetting, figuresOf, type SettingAnswer } from './add-line-setting.js';
import { LineSetting } from './line-setting.entity.js';
import type { CorrectSettingForm } from './line-setting.form.js';
import { settingOf, type LineSettingRow } from './line-settings.js';

export interface CorrectSettingAnswer {
  readonly lineId: string;
  /** What stands in its place; null: nothing was set then. */
  readonly setting: SettingAnswer | null;
}

/**
 * A change of setting was recorded wrongly, or did not occur. What the form leaves out stays as it was. No weight and no sum
 * rests on it, so nothing is worked out anew.
 * Refusals: `already-corrected`, `time-ahead`, those of the figures; not found: setting.
 */
@Injectable()
export class CorrectSetting {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, settingId: string, form: CorrectSettingForm): Promise<CorrectSettingAnswer> {
    return this.changes.run(asked, { settingId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const old = await settingOf(tx, asked.actor.siteId, settingId);
      await voidFact(tx, LineSetting, settingId, change);
      const setting = form.why === 'incorrect-data' ? await this.replace(tx, old, form, change.recordedAt) : null;
      const run = await runOfLineAt(tx, old.lineId, old.changedAt);
      const { lineId, formatId, setpointMilligrams, rejectBelowMilligrams, rejectAboveMilligrams, changedAt } = old;
      const before = { id: old.id, setpointMilligrams, rejectBelowMilligrams, rejectAboveMilligrams, changedAt };
      return {
        answer: { lineId, setting },
        entry: {
          action: 'correct-setting',
          subject: { kind: 'packing-line', id: lineId },
          touches: run === null ? [] : [{ kind: 'packing-run', id: run.id }],
          before: { ...before, formatId },
          after: { setting: setting === null ? null : { ...setting }, why: form.why },
          reason: form.reason,
        },
      };
    });
  }

  private async replace(tx: Tx, old: LineSettingRow, form: CorrectSettingForm, now: Instant): Promise<SettingAnswer> {
    const right = figuresOf(form);
    const changedAt = form.changedAt ?? old.changedAt;
    if (changedAt > now) throw new Refusal('time-ahead', { stated: changedAt, now });
    const isSame = changedAt === old.changedAt && Object.values(right).every((figure) => figure === null);
    if (isSame) throw new BadForm([{ field: 'setpointGrams', code: 'correction-without-change', facts: {} }]);
    return addLineSetting(tx, {
      ...{ id: this.ids.next(), lineId: old.lineId, format: await formatOf(tx, old.formatId), changedAt },
      setpointMilligrams: right.setpointMilligrams ?? old.setpointMilligrams,
      rejectBelowMilligrams: right.rejectBelowMilligrams ?? old.rejectBelowMilligrams,
      rejectAboveMilligrams: right.rejectAboveMilligrams ?? old.rejectAboveMilligrams,
      ...{ why: old.why, setBy: old.setBy },
    });
  }
}
