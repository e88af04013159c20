import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { settleAsked } from '../../journal/settle-asked.js';
import { runOfLineAt } from '../../packing/packing-runs.js';
import { Ids } from '../../platform/ids.js';
import { Refusal } from '../../platform/refusal.js';
import { ofSite } from '../../plant/of-site.js';
import { formatOf, lineOf } from '../../plant/plant-facts.js';
import { addLineSetting, figuresOf, type SettingAnswer } from './add-line-setting.js';
import type { ChangeSettingForm } from './line-setting.form.js';

/**
 * Somebody set the filler of a line, or the limits of its weigher, otherwise. It is written down, and parts nothing by itself.
 * Refusals: `setting-needs-format`, `setting-without-figure`, `setting-in-other-unit`, `setting-far-from-nominal`,
 * `setting-limits-crossed`, those of the time; not found: line, format.
 */
@Injectable()
export class ChangeSetting {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, lineId: string, form: ChangeSettingForm): Promise<SettingAnswer> {
    return this.changes.run(asked, { lineId, ...form }, async (tx, change) => {
      const line = ofSite(asked.actor, 'packing-line', await lineOf(tx, lineId));
      const stated = { statedAt: form.changedAt ?? null, reason: form.reason };
      const { occurredAt, statedAt } = settleAsked(asked, stated, change.recordedAt);
      const run = await runOfLineAt(tx, line.id, occurredAt);
      const formatId = form.formatId ?? run?.formatId ?? null;
      if (formatId === null) throw new Refusal('setting-needs-format', { line: line.code });
      const answer = await addLineSetting(tx, {
        ...{ id: this.ids.next(), lineId: line.id, ...figuresOf(form), changedAt: occurredAt, why: form.reason },
        format: ofSite(asked.actor, 'pack-format', await formatOf(tx, formatId)),
        setBy: asked.actor.personId,
      });
      return {
        answer,
        entry: {
          action: 'change-setting',
          subject: { kind: 'packing-line', id: line.id },
          touches: run === null ? [] : [{ kind: 'packing-run', id: run.id }],
          after: { ...answer },
          ...{ reason: form.reason, occurredAt, statedAt },
        },
      };
    });
  }
}
